/** How the capsule of this eye is opened, with what dye, how wide, and what an opening already made means for the lens. */
@NullMarked
package org.lensward.risk.opening;

import org.jspecify.annotations.NullMarked;
