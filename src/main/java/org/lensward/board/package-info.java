/** What people see: the theatre list. */
@NullMarked
package org.lensward.board;

import org.jspecify.annotations.NullMarked;
