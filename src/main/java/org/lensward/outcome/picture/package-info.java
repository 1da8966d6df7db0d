/** Counts of eyes small enough to draw, however many eyes went into them. */
@NullMarked
package org.lensward.outcome.picture;

import org.jspecify.annotations.NullMarked;
