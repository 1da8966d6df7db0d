/** The Bank page: what lies where, what is short, who is to have what, and what people do with cartons. */
@NullMarked
package org.lensward.board.bank;

import org.jspecify.annotations.NullMarked;
