package org.lensward.record;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.lensward.eye.Laterality;
import org.lensward.eye.Sign;
import org.lensward.risk.SurgeonGrade;

/** What Lensward understands of one coding by itself, without any site's map. What a map points to must be in it. */
public final class Vocabulary {

    /** Where in the record a code stands, by what it is there to say. */
    public enum Place {
        OBSERVATION,
        HISTORY,
        DRUG,
        ALLERGY,
        BOOKING,
        LENS,
        BODY_SITE,
        METHOD,
        SURGEON;

        /** As a column of a table names it. */
        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /** The extension by which a booking carries its target, in dioptres. */
    public static final String TARGET_EXTENSION = BookingReader.TARGET_EXTENSION;

    private Vocabulary() {}

    /** What the coding is understood as where it stands; empty if it is not. */
    public static Optional<String> meaning(Place place, Coding coding) {
        CodeableConcept alone = new CodeableConcept(coding.copy());
        return switch (place) {
            case OBSERVATION ->
                MeasurementCode.of(alone).map(MeasurementCode::words).or(() -> signs(alone));
            case HISTORY -> signs(alone);
            case DRUG ->
                signs(alone)
                        .or(() -> Optional.of("a drug without consequence").filter(any -> SignCodes.namesDrug(alone)));
            case ALLERGY -> allergy(alone);
            case BOOKING ->
                Optional.of("lens surgery").filter(any -> BookingReader.LENS_SURGERY.stream()
                        .anyMatch(code -> Codes.has(alone, Systems.SNOMED, code)));
            case LENS -> lens(alone);
            case BODY_SITE -> site(coding);
            case METHOD -> MeasurementReader.method(List.of(alone)).map(Object::toString);
            case SURGEON ->
                Codes.in(alone, Systems.SURGEON_GRADE).filter(code -> Stream.of(SurgeonGrade.values())
                        .anyMatch(each -> each.code().equals(code)));
        };
    }

    /** What the coding is understood as in any place, the bare name of a drug apart. */
    public static Optional<String> meaning(Coding coding) {
        return EnumSet.complementOf(EnumSet.of(Place.DRUG)).stream()
                .flatMap(place -> meaning(place, coding).stream())
                .findFirst();
    }

    private static Optional<String> signs(CodeableConcept alone) {
        Set<Sign> signs = SignCodes.of(alone);
        return signs.isEmpty()
                ? Optional.empty()
                : Optional.of(signs.stream().map(Sign::toString).collect(Collectors.joining(" and ")));
    }

    private static Optional<String> allergy(CodeableConcept alone) {
        if (AllergenCodes.deniesAll(alone)) {
            return Optional.of("no known allergy");
        }
        if (Codes.has(alone, Systems.SNOMED, AllergyReader.ANAPHYLAXIS)) {
            return Optional.of("anaphylaxis");
        }
        String substances =
                AllergenCodes.of(alone).stream().map(AllergenCodes::code).collect(Collectors.joining(" and "));
        return Optional.of(substances).filter(any -> !any.isEmpty());
    }

    private static Optional<String> lens(CodeableConcept alone) {
        if (LensCodes.isLens(alone)) {
            return Optional.of("lens model");
        }
        boolean known = LensCodes.kind(alone).isPresent() || LensCodes.isValue(alone);
        String code = alone.getCodingFirstRep().getCode();
        return known
                ? Optional.of(LensCodes.isConstant(alone) ? "lens constant" : code.replace('-', ' '))
                : Optional.empty();
    }

    private static Optional<String> site(Coding coding) {
        Set<Laterality> eyes = EyeCodes.sides(coding);
        if (!eyes.isEmpty()) {
            return Optional.of(EyeCodes.words(eyes));
        }
        return EyeCodes.isEye(coding) ? Optional.of("an eye") : Optional.empty();
    }

    /** Every measurement that any coding of the concept names: more than one is a contradiction. */
    public static Set<String> measurements(CodeableConcept concept) {
        Set<String> named = new TreeSet<>();
        concept.getCoding().forEach(coding -> MeasurementCode.of(new CodeableConcept(coding.copy()))
                .ifPresent(each -> named.add(each.words())));
        return named;
    }

    /** Every biometry method that any coding of the concept names: more than one is a contradiction. */
    public static Set<String> methods(CodeableConcept concept) {
        Set<String> named = new TreeSet<>();
        concept.getCoding().forEach(coding -> meaning(Place.METHOD, coding).ifPresent(named::add));
        return named;
    }

    /** The kind of unit in which the concept's value comes; empty for a concept we do not read. */
    public static Optional<UnitKind> kind(CodeableConcept concept) {
        return MeasurementCode.of(concept).map(MeasurementCode::kind).or(() -> LensCodes.kind(concept));
    }

    /** The eyes named by a code and its body sites together. */
    public static Set<Laterality> eyes(Shelf shelf, CodeableConcept code, List<CodeableConcept> bodySites) {
        return new EyeCodes(shelf).eyes(code, bodySites);
    }

    /** The eyes that the coding by itself names. */
    public static Set<Laterality> eyes(Coding coding) {
        return EyeCodes.sides(coding);
    }

    /** Whether any of the body sites is an eye, sided or not. */
    public static boolean isEye(Shelf shelf, List<CodeableConcept> bodySites) {
        return new EyeCodes(shelf).isEye(bodySites);
    }

    /** The eye as we write it. */
    public static Coding coding(Laterality eye) {
        return EyeCodes.concept(eye).getCodingFirstRep();
    }

    /** The eyes in words, for a message. */
    public static String words(Set<Laterality> eyes) {
        return EyeCodes.words(eyes);
    }
}
