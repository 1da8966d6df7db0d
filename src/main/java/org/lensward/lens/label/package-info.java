/** What the label of a carton says, read from a scan: device, lot, serial, expiry; never the power. */
@NullMarked
package org.lensward.lens.label;

import org.jspecify.annotations.NullMarked;
