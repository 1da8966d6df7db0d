/** Astigmatism as vectors and power matrices, and the toric lens that balances it. */
@NullMarked
package org.lensward.optics.toric;

import org.jspecify.annotations.NullMarked;
