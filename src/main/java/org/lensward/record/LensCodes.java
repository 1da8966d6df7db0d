package org.lensward.record;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.lensward.lens.Focus;
import org.lensward.lens.LensDesign.Build;
import org.lensward.lens.LensSite;
import org.lensward.lens.OpticMaterial;

/** The codes by which a lens model, its properties and its constants are known. */
final class LensCodes {

    static final String LENS = "intraocular-lens";
    static final String A_CONSTANT = "397263007";

    /** a0, a1 and a2 of Haigis, pACD of Hoffer Q, surgeon factor of Holladay 1. */
    private static final List<String> DICOM_CONSTANTS = List.of("111769", "111770", "111771", "111772", "111773");

    /** Properties of our own, each with the kind of unit its numbers come in. */
    private static final Map<String, UnitKind> PROPERTIES = Map.of(
            "placement", UnitKind.NONE,
            "optic-diameter", UnitKind.LENGTH,
            "power-range", UnitKind.POWER,
            "cylinders", UnitKind.POWER,
            "house-lens", UnitKind.NONE,
            "focus", UnitKind.NONE,
            "material", UnitKind.NONE,
            "build", UnitKind.NONE);

    /** Haigis' a1 and a2 are pure numbers, as the A-constant is; the other constants are lengths. */
    private static final List<String> PURE_CONSTANTS = List.of("111770", "111771");

    private LensCodes() {}

    /** The kind of unit in which the property's numbers come; empty for a property we do not read. */
    static Optional<UnitKind> kind(CodeableConcept type) {
        if (isConstant(type)) {
            boolean pure = Codes.has(type, Systems.SNOMED, A_CONSTANT)
                    || PURE_CONSTANTS.stream().anyMatch(code -> Codes.has(type, Systems.DICOM, code));
            return Optional.of(pure ? UnitKind.NUMBER : UnitKind.LENGTH);
        }
        return Codes.in(type, Systems.LENS_PROPERTY).map(PROPERTIES::get);
    }

    /** Whether the concept is a value that a property may hold. */
    static boolean isValue(CodeableConcept value) {
        return Codes.in(value, Systems.LENS_SITE).stream().anyMatch(code -> Stream.of(LensSite.values())
                        .anyMatch(each -> CatalogueReader.code(each).equals(code)))
                || Codes.in(value, Systems.LENS_FOCUS).stream().anyMatch(code -> Stream.of(Focus.values())
                        .anyMatch(each -> each.code().equals(code)))
                || Codes.in(value, Systems.OPTIC_MATERIAL).stream().anyMatch(code -> Stream.of(OpticMaterial.values())
                        .anyMatch(each -> each.code().equals(code)))
                || Codes.in(value, Systems.LENS_BUILD).stream().anyMatch(code -> Stream.of(Build.values())
                        .anyMatch(each -> each.code().equals(code)));
    }

    static boolean isLens(CodeableConcept type) {
        return Codes.has(type, Systems.DEVICE_TYPE, LENS);
    }

    static boolean isConstant(CodeableConcept type) {
        return Codes.has(type, Systems.SNOMED, A_CONSTANT)
                || DICOM_CONSTANTS.stream().anyMatch(code -> Codes.has(type, Systems.DICOM, code));
    }
}
