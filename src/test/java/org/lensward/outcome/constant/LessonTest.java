package org.lensward.outcome.constant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.outcome.Operated.DAY;
import static org.lensward.outcome.Operated.POLICY;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Laterality;
import org.lensward.eye.Specimen;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.ImplantedLens;
import org.lensward.outcome.Operated;
import org.lensward.outcome.OperatedEye;
import org.lensward.outcome.OperatedEyes;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/** Eyes that teach some formulas and not others. */
class LessonTest {

    private static Operated deep(double power) {
        Operated ordinary = Operated.ordinary();
        return ordinary.biometry(Optional.of(Specimen.ordinary(Laterality.RIGHT, DAY.minusDays(9))
                        .depth(3.2)
                        .biometry()))
                .lens(new ImplantedLens(
                        "model-a",
                        Dioptres.of(power),
                        Optional.empty(),
                        ordinary.lens().site()));
    }

    private static Lesson lesson(Operated eye) {
        Admitted.Counted counted = eye.counted();
        return Lesson.of(counted, counted.seen());
    }

    @Test
    void an_eye_without_a_measured_chamber_teaches_haigis_nothing() {
        Lesson lesson = lesson(Operated.ordinary());
        assertThat(lesson.haigis()).isEmpty();
        assertThat(lesson.errors()[ScopeTally.FORMULAS.indexOf(FormulaName.HAIGIS)])
                .isEmpty();
        assertThat(lesson.errors()[ScopeTally.FORMULAS.indexOf(FormulaName.SRK_T)])
                .hasSize(PositionNodes.COUNT);
    }

    @Test
    void a_lens_without_power_teaches_no_position() {
        assertThat(lesson(deep(21)).haigis()).hasSize(4);
        assertThat(lesson(deep(0)).haigis()).isEmpty();
    }

    @Test
    void a_refraction_that_no_lens_in_the_eye_explains_teaches_no_position() {
        assertThat(lesson(deep(5)).haigis()).isEmpty();
    }

    /** An A-constant of 111 puts the lens less than a millimetre behind the cornea: there is no room to move it. */
    @Test
    void a_lens_that_lies_on_the_cornea_cannot_be_moved() {
        LensConstants near = LensConstants.ofAConstant(PureNumber.of(111));
        Lesson lesson = lesson(Operated.ordinary().constants(Optional.of(near)));
        assertThat(lesson.errors()[ScopeTally.FORMULAS.indexOf(FormulaName.SRK_T)])
                .isEmpty();
    }

    @Test
    void a_model_with_an_a_constant_alone_teaches_two_formulas() {
        LensConstants alone = LensConstants.published(
                Optional.of(PureNumber.of(118.7)), Optional.empty(), Optional.empty(), Optional.empty());
        List<OperatedEye> eyes = new ArrayList<>();
        for (int each = 0; each < 12; each++) {
            eyes.add(Operated.ordinary()
                    .keys(String.format("p%02d", each), "o")
                    .constants(Optional.of(alone))
                    .eye());
        }
        List<Proposal> proposals = EyeTally.over(
                        OperatedEyes.of(eyes),
                        POLICY,
                        () -> new ConstantStudy(POLICY.learning(), (model, method) -> Optional.of(alone)))
                .proposals(new Well19937c(2));
        assertThat(proposals).extracting(Proposal::formula).containsOnly(FormulaName.SRK_T, FormulaName.T2);
        // All eyes are alike, so that no position is better than another for their scatter.
        assertThat(proposals).extracting(Proposal::aim).contains(Aim.ZERO_MEAN);
    }

    @Test
    void three_constants_need_four_eyes_that_differ() {
        RealVector few = new ArrayRealVector(HaigisSums.WIDTH);
        RealVector alike = new ArrayRealVector(HaigisSums.WIDTH);
        for (int each = 0; each < 3; each++) {
            HaigisSums.add(few, 0, new double[] {1, 3 + each, 23 + each * each, 5}, 1);
        }
        for (int each = 0; each < 30; each++) {
            HaigisSums.add(alike, 0, new double[] {1, 3.2, 23 + each, 5}, 1);
        }
        assertThat(new HaigisSums(few, 0).fit()).isEmpty();
        assertThat(new HaigisSums(alike, 0).fit()).isEmpty();
    }
}
