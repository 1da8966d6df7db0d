/** CDS Hooks 2.0: what a clinical system is told while a patient, an appointment or an order is before someone. */
@NullMarked
package org.lensward.board.cds;

import org.jspecify.annotations.NullMarked;
