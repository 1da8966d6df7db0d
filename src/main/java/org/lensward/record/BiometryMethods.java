package org.lensward.record;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.lensward.eye.BiometryMethod;

/** Biometry methods as they are coded: light by us, ultrasound by DICOM (PS3.16, CID 4230). */
public final class BiometryMethods {

    private BiometryMethods() {}

    /** The method that any of the concepts names. */
    public static Optional<BiometryMethod> of(List<CodeableConcept> concepts) {
        return MeasurementReader.method(concepts);
    }

    /** The method as we write it. */
    public static CodeableConcept concept(BiometryMethod method) {
        return switch (method) {
            case OPTICAL -> Codes.concept(Systems.BIOMETRY_METHOD, "optical", "Optical");
            case IMMERSION_ULTRASOUND -> Codes.concept(Systems.DICOM, "111751", "Ultrasound Immersion");
            case CONTACT_ULTRASOUND -> Codes.concept(Systems.DICOM, "111750", "Ultrasound Contact");
        };
    }
}
