/** Lens power and refraction by published formulas on one vergence core. */
@NullMarked
package org.lensward.optics;

import org.jspecify.annotations.NullMarked;
