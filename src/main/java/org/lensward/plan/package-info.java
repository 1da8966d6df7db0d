/** Eye, lens, risk and policy in; one plan, or the reasons there is none, out. */
@NullMarked
package org.lensward.plan;

import org.jspecify.annotations.NullMarked;
