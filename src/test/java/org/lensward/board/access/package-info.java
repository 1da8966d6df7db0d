/** Who is let in, and who is not. */
@NullMarked
package org.lensward.board.access;

import org.jspecify.annotations.NullMarked;
