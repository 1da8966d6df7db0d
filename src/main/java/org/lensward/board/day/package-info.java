/** The Day page: a theatre list kept in memory, refreshed behind the reader's back, and how it is shown. */
@NullMarked
package org.lensward.board.day;

import org.jspecify.annotations.NullMarked;
