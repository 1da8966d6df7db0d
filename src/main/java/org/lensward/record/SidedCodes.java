package org.lensward.record;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.eye.Laterality;

/** What codes by themselves say of the eye and of the operation, for those who bring new resources into the record. */
public final class SidedCodes {

    private static final Set<MeasurementCode> OF_NO_EYE =
            EnumSet.of(MeasurementCode.CLOTTING_INR, MeasurementCode.SOFT_LENSES_OUT, MeasurementCode.RIGID_LENSES_OUT);

    private SidedCodes() {}

    /** The eyes that a SNOMED CT structure or qualifier names; none for one that is not of one or both eyes. */
    public static Set<Laterality> ofSnomed(String code) {
        return of(
                new CodeableConcept(),
                new CodeableConcept(new Coding().setSystem(Systems.SNOMED).setCode(code)));
    }

    /** The eyes that a code, such as a sided LOINC code, and a body site name together. */
    public static Set<Laterality> of(CodeableConcept code, CodeableConcept bodySite) {
        return new EyeCodes(new Shelf(new Bundle())).eyes(code, List.of(bodySite));
    }

    /** Whether the code names a measurement that planning reads and that is of one eye. */
    public static boolean needEye(CodeableConcept code) {
        return MeasurementCode.of(code)
                .filter(each -> !OF_NO_EYE.contains(each))
                .isPresent();
    }

    /** Whether planning reads that measurement at all. */
    public static boolean isMeasurement(CodeableConcept code) {
        return MeasurementCode.of(code).isPresent();
    }

    /** Whether the SNOMED CT procedure puts a lens in, as {@link Changes#isBooking(ServiceRequest)} asks of a booking. */
    public static boolean isLensSurgery(String snomed) {
        return BookingReader.LENS_SURGERY.contains(snomed);
    }

    /** The eye as we write it. */
    public static CodeableConcept concept(Laterality eye) {
        return EyeCodes.concept(eye);
    }
}
