/** The Flow page: how messages flow, what is set aside and why, and the switches of those who run Lensward. */
@NullMarked
package org.lensward.board.flow;

import org.jspecify.annotations.NullMarked;
