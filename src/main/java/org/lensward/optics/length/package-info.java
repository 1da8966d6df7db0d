/** The true axial length behind an ultrasound reading: what the sound passed through, and whether the probe pressed the eye. */
@NullMarked
package org.lensward.optics.length;

import org.jspecify.annotations.NullMarked;
