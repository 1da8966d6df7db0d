package org.lensward.record;

import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Quantity;

/**
 * One number of a lens constant: most have one, Haigis' have three.
 *
 * @param code SNOMED CT or DICOM
 * @param value in mm, or a pure number
 */
public record ConstantPart(CodeableConcept code, Quantity value) {}
