/** What theatre systems and the pages call under {@code /api}: plans, lens checks, the lens bank, stock. */
@NullMarked
package org.lensward.board.api;

import org.jspecify.annotations.NullMarked;
