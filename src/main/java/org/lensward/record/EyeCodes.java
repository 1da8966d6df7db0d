package org.lensward.record;

import static org.lensward.eye.Laterality.LEFT;
import static org.lensward.eye.Laterality.RIGHT;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.BodyStructure;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.eye.Laterality;

/**
 * Which eye a resource speaks of. All statements it makes are gathered: none, one, or several that disagree; the reader decides what
 * that means.
 */
public final class EyeCodes {

    /** Standard extension that replaces a coded body site by a BodyStructure. */
    private static final String BODY_STRUCTURE = "http://hl7.org/fhir/StructureDefinition/bodySite";

    /** SNOMED CT structures of one eye, and the qualifiers right and left beside an eye structure. */
    private static final Map<String, Set<Laterality>> SNOMED_SIDES = Map.ofEntries(
            Map.entry("1290032005", EnumSet.of(RIGHT)),
            Map.entry("1290031003", EnumSet.of(LEFT)),
            Map.entry("1290043002", EnumSet.of(RIGHT)),
            Map.entry("1290041000", EnumSet.of(LEFT)),
            Map.entry("362502000", EnumSet.of(RIGHT)),
            Map.entry("362503005", EnumSet.of(LEFT)),
            Map.entry("18944008", EnumSet.of(RIGHT)),
            Map.entry("8966001", EnumSet.of(LEFT)),
            Map.entry("24028007", EnumSet.of(RIGHT)),
            Map.entry("7771000", EnumSet.of(LEFT)),
            Map.entry("51440002", EnumSet.of(RIGHT, LEFT)),
            Map.entry("362508001", EnumSet.of(RIGHT, LEFT)),
            Map.entry("40638003", EnumSet.of(RIGHT, LEFT)));

    /** LOINC codes that carry the side themselves. */
    private static final Map<String, Laterality> LOINC_SIDES = Map.of(
            "64742-0", RIGHT,
            "66067-0", LEFT,
            "79892-6", RIGHT,
            "79893-4", LEFT,
            "64744-6", RIGHT,
            "66068-8", LEFT,
            "79826-4", LEFT);

    private static final Set<String> SNOMED_EYE = Set.of("81745001", "244486005");

    private final Shelf shelf;

    EyeCodes(Shelf shelf) {
        this.shelf = shelf;
    }

    /** The eyes that a code and its body sites name together. */
    Set<Laterality> eyes(CodeableConcept code, List<CodeableConcept> bodySites) {
        Set<Laterality> eyes = EnumSet.noneOf(Laterality.class);
        code.getCoding().stream()
                .filter(coding -> Systems.LOINC.equals(coding.getSystem()))
                .map(Coding::getCode)
                .filter(LOINC_SIDES::containsKey)
                .forEach(loinc -> eyes.add(LOINC_SIDES.get(loinc)));
        bodySites.forEach(site -> eyes.addAll(eyes(site)));
        return eyes;
    }

    private Set<Laterality> eyes(CodeableConcept site) {
        Set<Laterality> eyes = EnumSet.noneOf(Laterality.class);
        site.getCoding().forEach(coding -> addSnomed(coding, eyes));
        site.getCoding().forEach(coding -> qualifiers(coding.getExtension(), eyes));
        qualifiers(site.getExtension(), eyes);
        for (Extension extension : site.getExtensionsByUrl(BODY_STRUCTURE)) {
            if (extension.getValue() instanceof Reference reference) {
                shelf.find(BodyStructure.class, reference).ifPresent(structure -> addStructure(structure, eyes));
            }
        }
        return eyes;
    }

    private static void addStructure(BodyStructure structure, Set<Laterality> eyes) {
        structure.getLocation().getCoding().forEach(coding -> addSnomed(coding, eyes));
        structure
                .getLocationQualifier()
                .forEach(qualifier -> qualifier.getCoding().forEach(coding -> addSnomed(coding, eyes)));
    }

    private static void qualifiers(List<Extension> extensions, Set<Laterality> eyes) {
        for (Extension extension : extensions) {
            if (extension.getValue() instanceof CodeableConcept concept) {
                concept.getCoding().forEach(coding -> addSnomed(coding, eyes));
            } else if (extension.getValue() instanceof Coding coding) {
                addSnomed(coding, eyes);
            }
        }
    }

    private static void addSnomed(Coding coding, Set<Laterality> eyes) {
        if (Systems.SNOMED.equals(coding.getSystem()) && SNOMED_SIDES.containsKey(code(coding))) {
            eyes.addAll(SNOMED_SIDES.get(code(coding)));
        }
    }

    /** An empty coding names nothing; a map must not be asked for null. */
    private static String code(Coding coding) {
        return coding.hasCode() ? coding.getCode() : "";
    }

    /** Whether any body site is an eye at all, sided or not. */
    boolean isEye(List<CodeableConcept> bodySites) {
        return bodySites.stream()
                .anyMatch(site -> !eyes(site).isEmpty()
                        || site.getCoding().stream().anyMatch(coding -> SNOMED_EYE.contains(code(coding))));
    }

    /** Whether one coding by itself means both eyes, as opposed to two that disagree. */
    static boolean statesBoth(List<CodeableConcept> bodySites) {
        return bodySites.stream()
                .flatMap(site -> site.getCoding().stream())
                .anyMatch(coding ->
                        SNOMED_SIDES.getOrDefault(code(coding), Set.of()).size() > 1);
    }

    /** The eyes that the coding by itself names, as a body site or as a code that carries its side. */
    static Set<Laterality> sides(Coding coding) {
        Set<Laterality> eyes = EnumSet.noneOf(Laterality.class);
        addSnomed(coding, eyes);
        if (Systems.LOINC.equals(coding.getSystem()) && LOINC_SIDES.containsKey(code(coding))) {
            eyes.add(LOINC_SIDES.get(code(coding)));
        }
        return eyes;
    }

    /** Whether the coding is an eye, sided or not. */
    static boolean isEye(Coding coding) {
        return Systems.SNOMED.equals(coding.getSystem())
                && (SNOMED_SIDES.containsKey(code(coding)) || SNOMED_EYE.contains(code(coding)));
    }

    /** The eyes in words, for a message. */
    static String words(Set<Laterality> eyes) {
        return eyes.stream().map(Laterality::toString).collect(Collectors.joining(" and "));
    }

    /** The one eye that the concept names; empty if it names none or both. */
    public static Optional<Laterality> eye(CodeableConcept concept) {
        Set<Laterality> eyes = EnumSet.noneOf(Laterality.class);
        concept.getCoding().forEach(coding -> addSnomed(coding, eyes));
        return eyes.size() == 1 ? eyes.stream().findFirst() : Optional.empty();
    }

    /** The eye as we write it. */
    static CodeableConcept concept(Laterality eye) {
        return new CodeableConcept(
                        new Coding().setSystem(Systems.SNOMED).setCode(eye == RIGHT ? "1290032005" : "1290031003"))
                .setText(eye + " eye");
    }
}
