/** The lens bank and its stock check kept in memory for those who look at all of it, refreshed behind them. */
@NullMarked
package org.lensward.board.store;

import org.jspecify.annotations.NullMarked;
