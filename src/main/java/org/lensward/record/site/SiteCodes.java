package org.lensward.record.site;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.lensward.record.UnitKind;
import org.lensward.record.Vocabulary;
import org.lensward.record.Vocabulary.Place;

/**
 * A hospital's own codes, units, eyes and identifiers, and what they are to us.
 *
 * @param version changes whenever anything in the map does; every plan records it
 * @param codes codes of measurements, signs, drugs, allergies, bookings and lenses
 * @param units spellings of units
 * @param eyes body sites and their qualifiers
 * @param identifiers the systems whose identifiers tell one patient from another; all, where none is named
 * @param methods codes of biometry methods
 */
public record SiteCodes(
        String version,
        List<MappedCode> codes,
        List<MappedUnit> units,
        List<MappedEye> eyes,
        List<String> identifiers,
        List<MappedCode> methods) {

    public SiteCodes {
        codes = List.copyOf(codes);
        units = List.copyOf(units);
        eyes = List.copyOf(eyes);
        identifiers = List.copyOf(identifiers);
        methods = List.copyOf(methods);
        for (MappedCode method : methods) {
            if (Vocabulary.meaning(Place.METHOD, method.means().coding()).isEmpty()) {
                throw new IllegalArgumentException(method.code() + " means no biometry method but " + method.means());
            }
        }
    }

    /** The map of a hospital that needs none. */
    public static SiteCodes none() {
        return new SiteCodes("none", List.of(), List.of(), List.of(), List.of(), List.of());
    }

    /** The same map, leaving units as they are sent. */
    SiteCodes withoutUnits() {
        return new SiteCodes(version, codes, List.of(), eyes, identifiers, methods);
    }

    public boolean isEmpty() {
        return codes.isEmpty() && units.isEmpty() && eyes.isEmpty() && identifiers.isEmpty() && methods.isEmpty();
    }

    /** Every meaning that the map gives the coding, in order; more than one is ambiguous. */
    Set<Meaning> meanings(Coding coding) {
        return entries(coding).map(MappedCode::means).collect(Collectors.toCollection(TreeSet::new));
    }

    /** Every eye that a code of a measurement or a diagnosis carries in itself. */
    Set<SiteEye> carried(CodeableConcept concept) {
        return concept.getCoding().stream()
                .flatMap(this::entries)
                .flatMap(entry -> entry.side().stream())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Every eye that the coding names as a body site. */
    Set<SiteEye> eyes(Coding coding) {
        return eyes.stream()
                .filter(entry -> names(coding, entry.code()))
                .map(MappedEye::eye)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private Stream<MappedCode> entries(Coding coding) {
        return Stream.concat(codes.stream(), methods.stream()).filter(entry -> names(coding, entry.code()));
    }

    private static boolean names(Coding coding, LocalCode code) {
        String system = coding.hasSystem() ? coding.getSystem() : "";
        return code.code().equals(coding.getCode()) && code.system().equals(system);
    }

    /** Every reading that the map gives the spelling; more than one is ambiguous. */
    List<MappedUnit> readings(UnitKind kind, String unit) {
        return units.stream()
                .filter(entry -> entry.kind() == kind && entry.unit().equals(unit))
                .distinct()
                .toList();
    }

    /** Whether an identifier of that system tells one patient from another. */
    boolean counts(String system) {
        return identifiers.isEmpty() || identifiers.contains(system);
    }

    /** The local codes that stand for any of those codes. */
    Stream<LocalCode> standingFor(String system, List<String> standard) {
        return codes.stream()
                .filter(entry -> entry.means().system().equals(system)
                        && standard.contains(entry.means().code()))
                .map(MappedCode::code)
                .distinct()
                .sorted();
    }
}
