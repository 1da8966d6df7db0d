/** One immutable value type per unit; every number that leaves a package wears one. */
@NullMarked
package org.lensward.quantity;

import org.jspecify.annotations.NullMarked;
