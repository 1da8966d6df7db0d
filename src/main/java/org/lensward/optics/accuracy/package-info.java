/** How sure a predicted refraction is for one eye. */
@NullMarked
package org.lensward.optics.accuracy;

import org.jspecify.annotations.NullMarked;
