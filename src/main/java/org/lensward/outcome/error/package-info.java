/** How far refractions ended from their prediction, by formula and by group of eyes. */
@NullMarked
package org.lensward.outcome.error;

import org.jspecify.annotations.NullMarked;
