/** Complications counted against what was expected of these operations. */
@NullMarked
package org.lensward.outcome.complication;

import org.jspecify.annotations.NullMarked;
