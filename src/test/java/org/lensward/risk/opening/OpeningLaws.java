package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.PHOTODISRUPTION;
import static org.lensward.risk.opening.OpeningTechnique.THERMAL;

import java.util.Collections;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.lensward.eye.Allergen;
import org.lensward.eye.Laterality;
import org.lensward.eye.Sign;
import org.lensward.lens.Focus;

/** What holds of every eye. */
class OpeningLaws {

    private static final OpeningPolicy ALL = Openings.having(PHOTODISRUPTION, DYE_LASER_COAGULATION, THERMAL);

    private static OpeningCandidate with(Set<Sign> signs) {
        return OpeningCandidate.reference().with(signs.toArray(Sign[]::new));
    }

    @Property
    void a_planned_opening_keeps_its_techniques_least_overlap(
            @ForAll Set<Sign> signs, @ForAll @DoubleRange(min = 4.5, max = 7) double optic) {
        OpeningPlan plan = with(signs).optic(optic).plan(ALL);
        OpeningSize size = plan.size().orElseThrow();
        double least =
                ALL.of(plan.technique().orElseThrow()).leastOverlap().value().value();
        assertThat(size.asMade().least().value()).isGreaterThanOrEqualTo(least - 1e-6);
        assertThat(size.healed()).isLessThan(size.diameter());
    }

    @Property
    void another_sign_never_narrows_the_opening_nor_lets_it_heal_wider(
            @ForAll Set<Sign> signs, @ForAll Sign more, @ForAll @DoubleRange(min = 5, max = 7) double optic) {
        OpeningSize before = with(signs).optic(optic).plan().size().orElseThrow();
        OpeningSize after = with(signs).with(more).optic(optic).plan().size().orElseThrow();
        assertThat(after.diameter()).isGreaterThanOrEqualTo(before.diameter());
        // within the step of 0.05 mm in which openings are planned
        assertThat(after.healed().value()).isLessThanOrEqualTo(before.healed().value() + 0.05);
    }

    @Property
    void a_right_eye_is_planned_as_a_left_one(@ForAll Set<Sign> signs) {
        assertThat(with(signs).side(Laterality.LEFT).plan(ALL))
                .isEqualTo(with(signs).side(Laterality.RIGHT).plan(ALL));
    }

    @Property
    void silence_never_makes_a_docked_laser_suit(@ForAll Set<Sign> silent) {
        Set<Sign> asked = Set.of(
                Sign.CANNOT_FIXATE,
                Sign.CANNOT_LIE_FLAT,
                Sign.CANNOT_COOPERATE,
                Sign.CORNEA_IRREGULAR,
                Sign.CORNEAL_GRAFT,
                Sign.KERATOCONUS,
                Sign.CORNEA_INCISED);
        Verdict verdict = OpeningCandidate.reference()
                .silentAbout(silent.toArray(Sign[]::new))
                .plan(ALL)
                .view(PHOTODISRUPTION)
                .verdict();
        boolean open = silent.stream().anyMatch(asked::contains);
        assertThat(verdict == Verdict.UNKNOWN).isEqualTo(open);
    }

    @Property
    void nobody_is_given_a_dye_they_are_allergic_to(@ForAll Set<Sign> signs, @ForAll Set<Allergen> allergies) {
        OpeningPlan plan =
                with(signs).allergicTo(allergies.toArray(Allergen[]::new)).plan(ALL);
        plan.dye().ifPresent(dye -> assertThat(
                        Collections.disjoint(dye.preparation().agent().allergens(), allergies))
                .isTrue());
    }

    @Property
    void a_chosen_technique_is_at_hand_and_not_forbidden(@ForAll Set<Sign> signs, @ForAll Set<Sign> silent) {
        OpeningPlan plan = with(signs).silentAbout(silent.toArray(Sign[]::new)).plan(ALL);
        plan.technique().ifPresent(technique -> assertThat(plan.view(technique).verdict())
                .isIn(Verdict.SUITS, Verdict.SUITS_WITH_CONDITIONS, Verdict.UNKNOWN));
    }

    @Property
    void a_lens_that_goes_in_off_centre_goes_in_centred(
            @ForAll Focus focus,
            @ForAll @DoubleRange(min = 4, max = 6.5) double opening,
            @ForAll @DoubleRange(min = 0, max = 1) double apart) {
        if (goesIn(focus, opening, apart)) {
            assertThat(goesIn(focus, opening, 0)).isTrue();
        }
    }

    /** The edge on the far side stays, the centre moves by half of what is added. */
    @Property(tries = 3000)
    void a_lens_goes_in_once_the_opening_was_widened_as_advised(
            @ForAll Focus focus,
            @ForAll @DoubleRange(min = 5.5, max = 7) double optic,
            @ForAll @DoubleRange(min = 4, max = 6) double opening,
            @ForAll @DoubleRange(min = 0, max = 1) double apart) {
        for (ImplantAdvice advice : judge(focus, optic, opening, apart).advice()) {
            if (advice instanceof ImplantAdvice.EnlargeFirst widen) {
                for (double wide :
                        new double[] {widen.least().value(), widen.most().value()}) {
                    double centre = Math.max(0, apart - (wide - opening) / 2);
                    assertThat(judge(focus, optic, wide, centre).goesIn()).isTrue();
                }
            }
        }
    }

    private static OpeningJudgement judge(Focus focus, double optic, double opening, double apart) {
        return OpeningCandidate.reference()
                .optic(optic)
                .opened(opening, apart)
                .focus(focus)
                .toric()
                .judge(OpeningTechnique.TORN_BY_HAND)
                .orElseThrow();
    }

    private static boolean goesIn(Focus focus, double opening, double apart) {
        return judge(focus, 6, opening, apart).goesIn();
    }
}
