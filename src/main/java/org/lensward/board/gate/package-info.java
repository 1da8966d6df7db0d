/** What stands between a caller and the pages: how often, how much, how deep. */
@NullMarked
package org.lensward.board.gate;

import org.jspecify.annotations.NullMarked;
