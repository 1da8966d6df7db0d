/** Lens models, their constants and powers, and the kit of lenses that one eye needs. */
@NullMarked
package org.lensward.lens;

import org.jspecify.annotations.NullMarked;
