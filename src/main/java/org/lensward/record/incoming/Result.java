package org.lensward.record.incoming;

import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Type;
import org.lensward.eye.Laterality;

/**
 * One measured value as it was sent.
 *
 * @param place where it stands, for a message
 * @param group the results of one group are one Observation; empty stands alone
 * @param code what was measured
 * @param value the value with its unit as sent; none where it is withdrawn
 * @param eye which eye, where it is of one
 * @param status final, corrected, withdrawn
 * @param method how it was measured
 * @param taken when
 */
public record Result(
        String place,
        String group,
        CodeableConcept code,
        Optional<Type> value,
        Optional<Laterality> eye,
        ObservationStatus status,
        Optional<CodeableConcept> method,
        Optional<DateTimeType> taken) {}
