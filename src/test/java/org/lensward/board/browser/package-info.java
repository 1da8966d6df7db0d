/** Pages in a real Chromium, on the demo's server. */
@NullMarked
package org.lensward.board.browser;

import org.jspecify.annotations.NullMarked;
