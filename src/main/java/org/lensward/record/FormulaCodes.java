package org.lensward.record;

import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.lensward.lens.FormulaView;
import org.lensward.optics.Constant;
import org.lensward.optics.FormulaName;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Formulas and their constants as DICOM PS3.16 (CID 4236, CID 4237) and SNOMED CT code them. */
final class FormulaCodes {

    private FormulaCodes() {}

    static CodeableConcept concept(FormulaName formula) {
        return switch (formula) {
            case SRK_T -> Codes.concept(Systems.DICOM, "111767", "SRK-T");
            case HOLLADAY_1 -> Codes.concept(Systems.DICOM, "111762", "Holladay 1");
            case HOFFER_Q -> Codes.concept(Systems.DICOM, "111764", "Hoffer Q");
            case HAIGIS -> Codes.concept(Systems.DICOM, "111760", "Haigis");
            case HAIGIS_L -> Codes.concept(Systems.DICOM, "111761", "Haigis-L");
            case T2 -> Codes.concept(Systems.FORMULA, "t2", "T2");
            case SHAMMAS_MYOPIC -> Codes.concept(Systems.FORMULA, "shammas-pl", "Shammas-PL");
            case SHAMMAS_HYPEROPIC -> Codes.concept(Systems.FORMULA, "shammas-phl", "Shammas-PHL");
        };
    }

    /** The formula in an id. */
    static String slug(FormulaName formula) {
        return switch (formula) {
            case SRK_T -> "srk-t";
            case HOLLADAY_1 -> "holladay-1";
            case HOFFER_Q -> "hoffer-q";
            case HAIGIS -> "haigis";
            case T2 -> "t2";
            case HAIGIS_L -> "haigis-l";
            case SHAMMAS_MYOPIC -> "shammas-pl";
            case SHAMMAS_HYPEROPIC -> "shammas-phl";
        };
    }

    /** The constants that went into the formula, each as a component. */
    static List<ObservationComponentComponent> constants(FormulaView view) {
        List<ObservationComponentComponent> components = new ArrayList<>();
        LensConstants constants = view.constants();
        switch (view.formula()) {
            case SRK_T, T2, SHAMMAS_MYOPIC, SHAMMAS_HYPEROPIC -> {
                PureNumber a = constants.aConstant().map(Constant::value).orElseThrow();
                components.add(component(Systems.SNOMED, "397263007", "A-constant", Quantities.number(a)));
            }
            case HOLLADAY_1 -> {
                Millimetres factor =
                        constants.surgeonFactor().map(Constant::value).orElseThrow();
                components.add(component(Systems.DICOM, "111773", "Surgeon Factor", Quantities.millimetres(factor)));
            }
            case HOFFER_Q -> {
                Millimetres depth =
                        constants.personalisedAcd().map(Constant::value).orElseThrow();
                components.add(
                        component(Systems.DICOM, "111772", "Hoffer pACD Constant", Quantities.millimetres(depth)));
            }
            case HAIGIS, HAIGIS_L -> {
                HaigisConstants haigis = constants.haigis().map(Constant::value).orElseThrow();
                components.add(component(Systems.DICOM, "111769", "Haigis a0", Quantities.millimetres(haigis.a0())));
                components.add(component(Systems.DICOM, "111770", "Haigis a1", Quantities.number(haigis.a1())));
                components.add(component(Systems.DICOM, "111771", "Haigis a2", Quantities.number(haigis.a2())));
            }
        }
        return components;
    }

    private static ObservationComponentComponent component(String system, String code, String display, Quantity value) {
        return new ObservationComponentComponent(Codes.concept(system, code, display)).setValue(value);
    }
}
