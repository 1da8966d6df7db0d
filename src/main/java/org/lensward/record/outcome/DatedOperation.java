package org.lensward.record.outcome;

import java.time.LocalDate;
import org.hl7.fhir.r4.model.Procedure;
import org.lensward.eye.Laterality;

/**
 * An operation that says which eye and when.
 *
 * @param procedure as recorded
 * @param eye the one eye
 * @param day the day
 */
record DatedOperation(Procedure procedure, Laterality eye, LocalDate day) {}
