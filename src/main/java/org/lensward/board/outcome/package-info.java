/** The outcomes page: how operated eyes then saw, drawn and told. */
@NullMarked
package org.lensward.board.outcome;

import org.jspecify.annotations.NullMarked;
