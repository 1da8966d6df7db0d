/** Figures and health for those who run the adapter: queues, plans, refusals, tokens and certificates; never a patient. */
@NullMarked
package org.lensward.flow.figures;

import org.jspecify.annotations.NullMarked;
