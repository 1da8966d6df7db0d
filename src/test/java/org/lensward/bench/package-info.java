/** How long the optics take, measured by JMH; run by hand, never by the build. */
@NullMarked
package org.lensward.bench;

import org.jspecify.annotations.NullMarked;
