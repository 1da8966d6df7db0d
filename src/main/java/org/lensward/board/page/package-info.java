/** What every page shares: how it is marked, what its layout needs, and what it shows when something went wrong. */
@NullMarked
package org.lensward.board.page;

import org.jspecify.annotations.NullMarked;
