/** One step of one lens check, whichever way it was asked for. */
@NullMarked
package org.lensward.board.step;

import org.jspecify.annotations.NullMarked;
