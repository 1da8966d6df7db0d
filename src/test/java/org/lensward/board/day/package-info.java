/** The lists in memory. */
@NullMarked
package org.lensward.board.day;

import org.jspecify.annotations.NullMarked;
