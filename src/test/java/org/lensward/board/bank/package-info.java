/** Tests of the Bank page, and what it costs. */
@NullMarked
package org.lensward.board.bank;

import org.jspecify.annotations.NullMarked;
