/** What may go wrong with this eye, how likely, and why. */
@NullMarked
package org.lensward.risk;

import org.jspecify.annotations.NullMarked;
