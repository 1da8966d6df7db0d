/** In which order a theatre's eyes are best operated on, and why. */
@NullMarked
package org.lensward.plan.order;

import org.jspecify.annotations.NullMarked;
