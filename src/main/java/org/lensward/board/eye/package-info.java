/** One eye's plan for people: the eye drawn to scale, what each formula says, the surgeon's word, and where each number stands. */
@NullMarked
package org.lensward.board.eye;

import org.jspecify.annotations.NullMarked;
