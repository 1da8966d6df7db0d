/** The lenses in the building: units, who has them, and which unit goes to which eye. */
@NullMarked
package org.lensward.lens.stock;

import org.jspecify.annotations.NullMarked;
