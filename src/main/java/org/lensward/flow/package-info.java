/** What the routes call, and what the commands call: policy, planning a Bundle, watching, gathering, publishing. */
@NullMarked
package org.lensward.flow;

import org.jspecify.annotations.NullMarked;
