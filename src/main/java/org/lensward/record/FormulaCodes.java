package org.lensward.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.lensward.lens.FormulaView;
import org.lensward.lens.PlanningMethod;
import org.lensward.lens.Variant;
import org.lensward.optics.Constant;
import org.lensward.optics.FormulaName;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Formulas and their constants as DICOM PS3.16 (CID 4236, CID 4237) and SNOMED CT code them. */
public final class FormulaCodes {

    private FormulaCodes() {}

    /** The method: the published formula's own code, or ours where the formula was told something else than it was made for. */
    static CodeableConcept concept(PlanningMethod method) {
        CodeableConcept concept = method.variant() == Variant.AS_PUBLISHED
                ? published(method.name())
                : Codes.concept(Systems.FORMULA, method.code(), method.words());
        return concept.setText(method.words());
    }

    private static CodeableConcept published(FormulaName formula) {
        return switch (formula) {
            case SRK_T -> Codes.concept(Systems.DICOM, "111767", "SRK-T");
            case HOLLADAY_1 -> Codes.concept(Systems.DICOM, "111762", "Holladay 1");
            case HOFFER_Q -> Codes.concept(Systems.DICOM, "111764", "Hoffer Q");
            case HAIGIS -> Codes.concept(Systems.DICOM, "111760", "Haigis");
            case HAIGIS_L -> Codes.concept(Systems.DICOM, "111761", "Haigis-L");
            case T2 -> Codes.concept(Systems.FORMULA, "t2", "T2");
            case SHAMMAS_MYOPIC ->
                Codes.concept(Systems.FORMULA, "shammas-myopic", "Shammas no-history, after myopic laser");
            case SHAMMAS_HYPEROPIC ->
                Codes.concept(Systems.FORMULA, "shammas-hyperopic", "Shammas no-history, after hyperopic laser");
        };
    }

    /** The published formula that a method names; empty for one that was told something else than it was made for. */
    public static Optional<FormulaName> formula(CodeableConcept method) {
        return Stream.of(FormulaName.values())
                .filter(each -> Codes.in(published(each), Systems.DICOM)
                                .filter(code -> Codes.has(method, Systems.DICOM, code))
                                .isPresent()
                        || Codes.in(published(each), Systems.FORMULA)
                                .filter(code -> Codes.has(method, Systems.FORMULA, code))
                                .isPresent())
                .findFirst();
    }

    /** The formula as its authors published it, coded. */
    public static CodeableConcept concept(FormulaName formula) {
        return published(formula).setText(formula.toString());
    }

    /** The constants that predictions state as components, taken together. */
    public static LensConstants constants(List<Observation> predictions) {
        Optional<Double> a0 = stated(predictions, Systems.DICOM, "111769");
        Optional<Double> a1 = stated(predictions, Systems.DICOM, "111770");
        Optional<Double> a2 = stated(predictions, Systems.DICOM, "111771");
        Optional<HaigisConstants> haigis = a0.isPresent() && a1.isPresent() && a2.isPresent()
                ? Optional.of(
                        new HaigisConstants(Millimetres.of(a0.get()), PureNumber.of(a1.get()), PureNumber.of(a2.get())))
                : Optional.empty();
        return LensConstants.published(
                stated(predictions, Systems.SNOMED, LensCodes.A_CONSTANT).map(PureNumber::of),
                stated(predictions, Systems.DICOM, "111773").map(Millimetres::of),
                stated(predictions, Systems.DICOM, "111772").map(Millimetres::of),
                haigis);
    }

    private static Optional<Double> stated(List<Observation> predictions, String system, String code) {
        return predictions.stream()
                .flatMap(each -> each.getComponent().stream())
                .filter(each -> Codes.has(each.getCode(), system, code))
                .filter(each -> each.getValue() instanceof Quantity given && given.hasValue())
                .map(each -> each.getValueQuantity().getValue().doubleValue())
                .findFirst();
    }

    /** The constants that went into the formula, each as a component. */
    static List<ObservationComponentComponent> constants(FormulaView view) {
        LensConstants all = view.constants();
        LensConstants own =
                switch (view.formula()) {
                    case SRK_T, T2, SHAMMAS_MYOPIC, SHAMMAS_HYPEROPIC ->
                        new LensConstants(all.aConstant(), Optional.empty(), Optional.empty(), Optional.empty());
                    case HOLLADAY_1 ->
                        new LensConstants(Optional.empty(), all.surgeonFactor(), Optional.empty(), Optional.empty());
                    case HOFFER_Q ->
                        new LensConstants(Optional.empty(), Optional.empty(), all.personalisedAcd(), Optional.empty());
                    case HAIGIS, HAIGIS_L ->
                        new LensConstants(Optional.empty(), Optional.empty(), Optional.empty(), all.haigis());
                };
        return parts(own).stream()
                .map(each -> new ObservationComponentComponent(each.code()).setValue(each.value()))
                .toList();
    }

    /** Every constant that is there, number by number. */
    public static List<ConstantPart> parts(LensConstants constants) {
        List<ConstantPart> parts = new ArrayList<>();
        constants
                .aConstant()
                .ifPresent(each -> parts.add(
                        part(Systems.SNOMED, LensCodes.A_CONSTANT, "A-constant", Quantities.number(each.value()))));
        constants
                .surgeonFactor()
                .ifPresent(each -> parts.add(
                        part(Systems.DICOM, "111773", "Surgeon Factor", Quantities.millimetres(each.value()))));
        constants
                .personalisedAcd()
                .ifPresent(each -> parts.add(
                        part(Systems.DICOM, "111772", "Hoffer pACD Constant", Quantities.millimetres(each.value()))));
        constants.haigis().map(Constant::value).ifPresent(haigis -> {
            parts.add(part(Systems.DICOM, "111769", "Haigis a0", Quantities.millimetres(haigis.a0())));
            parts.add(part(Systems.DICOM, "111770", "Haigis a1", Quantities.number(haigis.a1())));
            parts.add(part(Systems.DICOM, "111771", "Haigis a2", Quantities.number(haigis.a2())));
        });
        return List.copyOf(parts);
    }

    /** The numbers of the constants that are there: {@code A 119.000}. */
    public static String words(LensConstants constants) {
        return Stream.of(
                        constants.aConstant().map(each -> number("A", each.value())),
                        constants.surgeonFactor().map(each -> number("SF", each.value())),
                        constants.personalisedAcd().map(each -> number("pACD", each.value())),
                        constants
                                .haigis()
                                .map(Constant::value)
                                .map(each -> number("a0", each.a0()) + " " + number("a1", each.a1()) + " "
                                        + number("a2", each.a2())))
                .flatMap(Optional::stream)
                .collect(Collectors.joining(" "));
    }

    private static String number(String name, org.lensward.quantity.Quantity value) {
        return String.format(Locale.ROOT, "%s %.3f", name, value.value());
    }

    private static ConstantPart part(String system, String code, String display, Quantity value) {
        return new ConstantPart(Codes.concept(system, code, display), value);
    }
}
