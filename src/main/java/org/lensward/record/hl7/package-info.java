/** HL7 version 2 in and out: messages of biometry and bookings as FHIR resources, acknowledgements, lens orders. */
@NullMarked
package org.lensward.record.hl7;

import org.jspecify.annotations.NullMarked;
