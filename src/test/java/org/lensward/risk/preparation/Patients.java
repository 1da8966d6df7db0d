package org.lensward.risk.preparation;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.eye.Laterality;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;

/** Patients made at random, each with signs, allergies and readings of any kind; a property is tried on a thousand of them. */
final class Patients {

    private Patients() {}

    static Arbitrary<Patient> anyone() {
        Arbitrary<Patient> base = Arbitraries.of(Patient.ordinary(), Patient.unknown());
        Arbitrary<Sign[]> signs =
                Arbitraries.of(Sign.class).array(Sign[].class).uniqueElements().ofMaxSize(25);
        return Combinators.combine(base, signs, signs, allergies(), eyes(), examinations())
                .as((patient, present, absent, allergies, eye, examined) -> {
                    Patient made =
                            patient.without(absent).with(present).measured(eye).examined(examined);
                    for (Allergy allergy : allergies) {
                        made = made.allergic(allergy.to(), allergy.severe(), allergy.words());
                    }
                    return made.age(18 + present.length * 3).pupil(3 + absent.length / 4.0);
                })
                .withoutEdgeCases();
    }

    private static Arbitrary<List<Allergy>> allergies() {
        return Combinators.combine(
                        Arbitraries.of(Allergen.class).set().ofMaxSize(3),
                        Arbitraries.of(true, false),
                        Arbitraries.of("rash", "collapse", "drops, blue"))
                .as((to, severe, words) -> new Allergy(to, severe, words, Patient.PERSON))
                .list()
                .ofMaxSize(3);
    }

    private static Arbitrary<Specimen> eyes() {
        return Combinators.combine(
                        Arbitraries.doubles().between(19, 34).ofScale(2),
                        Arbitraries.doubles().between(1.8, 4).ofScale(2))
                .as((length, depth) -> Specimen.ordinary(Laterality.RIGHT, Patient.OPERATION)
                        .length(length)
                        .depth(depth));
    }

    private static Arbitrary<Examined> examinations() {
        return Combinators.combine(
                        Arbitraries.doubles().between(8, 40).ofScale(0),
                        Arbitraries.doubles().between(500, 3000).ofScale(0),
                        Arbitraries.integers().between(0, 8),
                        Arbitraries.integers().between(-2, 10),
                        Arbitraries.of(true, false))
                .as((pressure, cells, lost, days, known) -> known
                        ? Examined.nothing()
                                .pressure(pressure)
                                .cells(cells)
                                .lost(lost)
                                .clotting(2 + cells / 2000, Patient.OPERATION.minusDays(days))
                        : Examined.nothing());
    }
}
