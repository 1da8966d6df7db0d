/** How one eye and its owner are prepared for the operation: precautions, anaesthetic, agents, lens types and the things to bring. */
@NullMarked
package org.lensward.risk.preparation;

import org.jspecify.annotations.NullMarked;
