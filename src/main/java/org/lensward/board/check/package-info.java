/** One step of one lens check, whichever way it was asked for. */
@NullMarked
package org.lensward.board.check;

import org.jspecify.annotations.NullMarked;
