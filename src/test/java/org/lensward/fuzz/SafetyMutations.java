package org.lensward.fuzz;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.fuzz.FuzzTest.Reason;

/** Changes of side, unit, sign or patient of one measurement. Each makes the measurement another than was taken. */
final class SafetyMutations {

    private static final List<String> UNITS = List.of(
            "mm",
            "cm",
            "m",
            "um",
            "[in_i]",
            "[diop]",
            "D",
            "dpt",
            "deg",
            "rad",
            "1",
            "m/s",
            "s",
            "%",
            "kg",
            "mm[Hg]",
            "",
            "millimetre",
            "MM",
            "[Diop]",
            "\u0000");

    /** Quantities that may have either sign: a turned sign is a possible value, and no reader can know. */
    private static final Set<String> SIGNED = Set.of("spherical-equivalent", "refraction-before-laser", "sphere");

    private final Records records;

    SafetyMutations(Records records) {
        this.records = records;
    }

    Mutant of(SplittableRandom random) {
        int seed = random.nextInt(records.bundles().size());
        Bundle record = records.bundles().get(seed);
        List<Observation> all = record.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(Observation.class::isInstance)
                .map(Observation.class::cast)
                .filter(each -> !quantities(each).isEmpty())
                .toList();
        Observation one = Records.any(all, random);
        Reason reason = Records.any(List.of(Reason.values()), random);
        Consumer<Observation> change =
                switch (reason) {
                    case SIDE -> side(random);
                    case UNIT -> unit(random);
                    case SIGN -> each -> quantities(each).forEach(SafetyMutations::turn);
                    case PATIENT -> patient(random);
                };
        String name = "Observation/" + one.getIdElement().getIdPart();
        boolean signed = reason == Reason.SIGN
                && one.getCode().getCoding().stream().anyMatch(each -> SIGNED.contains(each.getCode()));
        return new Mutant(
                records.names().get(seed),
                reason + " of " + name,
                Records.with(record, one, change),
                signed ? Optional.empty() : Optional.of(name));
    }

    private static List<Quantity> quantities(Observation observation) {
        List<Quantity> all = new ArrayList<>();
        if (observation.hasValueQuantity()) {
            all.add(observation.getValueQuantity());
        }
        observation.getComponent().stream()
                .filter(Observation.ObservationComponentComponent::hasValueQuantity)
                .forEach(each -> all.add(each.getValueQuantity()));
        return all;
    }

    private static Consumer<Observation> side(SplittableRandom random) {
        String code = Records.any(
                List.of("1290032005", "1290031003", "81745001", "362508001", "24028007", "7771000", ""), random);
        return each -> {
            CodeableConcept other = new CodeableConcept();
            if (!code.isEmpty()) {
                other.addCoding().setSystem("http://snomed.info/sct").setCode(code);
            }
            each.setBodySite(other);
        };
    }

    private static Consumer<Observation> unit(SplittableRandom random) {
        String unit = Records.any(UNITS, random);
        boolean codeToo = random.nextBoolean();
        return each -> quantities(each).forEach(quantity -> {
            quantity.setCode(unit);
            if (codeToo) {
                quantity.setUnit(unit);
            }
        });
    }

    private static void turn(Quantity quantity) {
        BigDecimal value = quantity.getValue();
        if (value != null) {
            quantity.setValue(value.negate());
        }
    }

    private static Consumer<Observation> patient(SplittableRandom random) {
        String other = Records.any(List.of("Patient/somebody-else", "Patient/", "Group/patient-01", "#p", ""), random);
        return each -> each.setSubject(other.isEmpty() ? new Reference() : new Reference(other));
    }
}
