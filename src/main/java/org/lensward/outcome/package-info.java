/** How operated eyes then saw, and which of them count. */
@NullMarked
package org.lensward.outcome;

import org.jspecify.annotations.NullMarked;
