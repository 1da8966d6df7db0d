package org.lensward.fuzz;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.PrimitiveType;
import org.hl7.fhir.r4.model.Property;
import org.hl7.fhir.r4.model.Resource;

/** Any change of anything: values beyond all measure, other words, things gone, twice or out of order. */
final class AnyMutations {

    private static final List<String> VALUES = List.of(
            "",
            " ",
            "0",
            "-0",
            "1e308",
            "-1e308",
            "1e-400",
            "1e999999999",
            "-1e999999999",
            "1e-999999999",
            "0.1e-2147483647",
            "9".repeat(400),
            "3.14159265358979323846264338327950288",
            "-1",
            "23.5",
            "43.25",
            "180",
            "181",
            "true",
            "2026-11-25",
            "0001-01-01",
            "9999-12-31",
            "2026",
            "2026-02-30",
            "2099-01-01T00:00:00Z",
            "final",
            "unknown",
            "entered-in-error",
            "revoked",
            "male",
            "Patient/other",
            "#",
            "urn:uuid:0",
            "http://loinc.org",
            "\u0000",
            "\u202e",
            "%s%n%d",
            "{{x}}",
            "<script>",
            "../../etc",
            "a".repeat(5_000),
            "\ud800");

    private final Records records;

    AnyMutations(Records records) {
        this.records = records;
    }

    Mutant of(SplittableRandom random) {
        int seed = random.nextInt(records.bundles().size());
        Bundle bundle = records.bundles().get(seed);
        StringBuilder what = new StringBuilder();
        int times = 1 + random.nextInt(3);
        for (int time = 0; time < times; time++) {
            bundle = changed(bundle, random, what);
        }
        return new Mutant(records.names().get(seed), what.toString(), bundle, Optional.empty());
    }

    private static Bundle changed(Bundle bundle, SplittableRandom random, StringBuilder what) {
        if (bundle.getEntry().isEmpty()) {
            return bundle;
        }
        Resource one = Records.any(bundle.getEntry(), random).getResource();
        String name = one.fhirType() + "/" + one.getIdElement().getIdPart();
        switch (random.nextInt(12)) {
            case 0 -> {
                what.append(" without ").append(name);
                Bundle less = new Bundle().setType(bundle.getType());
                bundle.getEntry().stream()
                        .filter(entry -> entry.getResource() != one)
                        .forEach(entry -> less.addEntry().setResource(entry.getResource()));
                return less;
            }
            case 1 -> {
                what.append(" twice ").append(name);
                Bundle more = Records.with(bundle, one, each -> {});
                more.addEntry().setResource(one.copy());
                return more;
            }
            case 2 -> {
                what.append(" in another order");
                Bundle shuffled = Records.with(bundle, one, each -> {});
                Collections.shuffle(shuffled.getEntry(), new Random(random.nextLong()));
                return shuffled;
            }
            default -> {
                return Records.with(bundle, one, each -> spoil(each, name, random, what));
            }
        }
    }

    /** One element anywhere below gets another value, or none. */
    private static void spoil(Resource resource, String name, SplittableRandom random, StringBuilder what) {
        List<Base> all = new ArrayList<>();
        collect(resource, all);
        Base one = Records.any(all, random);
        if (one instanceof PrimitiveType<?> primitive) {
            String value = Records.any(VALUES, random);
            try {
                primitive.setValueAsString(random.nextInt(4) == 0 ? null : value);
                // Some values are taken and only refused when they are copied.
                primitive.copy();
            } catch (RuntimeException notOfItsType) {
                primitive.setValueAsString(null);
            }
            what.append(' ')
                    .append(name)
                    .append(' ')
                    .append(primitive.fhirType())
                    .append(" := ")
                    .append(value, 0, Math.min(20, value.length()));
            return;
        }
        Property property = Records.any(one.children(), random);
        for (Base child : property.getValues()) {
            one.removeChild(property.getName(), child);
        }
        what.append(' ').append(name).append(" without ").append(property.getName());
    }

    private static void collect(Base base, List<Base> all) {
        all.add(base);
        for (Property property : base.children()) {
            for (Base child : property.getValues()) {
                if (child != null) {
                    collect(child, all);
                }
            }
        }
    }
}
