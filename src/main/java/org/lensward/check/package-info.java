/** The lens check: at each checkpoint, what people read and scan against what the plan expects. */
@NullMarked
package org.lensward.check;

import org.jspecify.annotations.NullMarked;
