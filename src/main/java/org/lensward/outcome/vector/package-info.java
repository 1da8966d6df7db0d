/** Astigmatism after surgery as vectors of the double-angle plane, and their scatter. */
@NullMarked
package org.lensward.outcome.vector;

import org.jspecify.annotations.NullMarked;
