/** What became of the opening of the capsule. */
@NullMarked
package org.lensward.outcome.opening;

import org.jspecify.annotations.NullMarked;
