package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.ADDED_LENS;
import static org.lensward.finding.FindingCode.LENS_ALREADY_OUT;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Measured;
import org.lensward.eye.OtherReadings;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Finding;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensSite;
import org.lensward.lens.Lenses;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** What a second lens would have to be, from the refraction alone: a note, while the plan stays withheld. */
class AddedLensNotesTest {

    private static final Pattern POWER = Pattern.compile("would need (-?[0-9.]+) D to reach");

    /** 12.00 D at the paper's 14 mm is this at our 12 mm, the cornea's refraction being one and the same: R / (1 - v R). */
    private static final double TWELVE_AT_14_MM = moved(12, 0.014, 0.012);

    private static final double TARGET = moved(-0.5, 0.014, 0.012);

    private static double moved(double refraction, double from, double to) {
        double atCornea = refraction / (1 - from * refraction);
        return atCornea / (1 + to * atCornea);
    }

    /** Haigis with a1 = a2 = 0 puts every lens at a0, here 5.00 mm as the worked example has it. */
    private static LensModel at(double position) {
        return Lenses.model(
                "chamber",
                LensSite.ANTERIOR_CHAMBER,
                LensConstants.published(
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(
                                new HaigisConstants(Millimetres.of(position), PureNumber.of(0), PureNumber.of(0)))));
    }

    private static Cases refracted(double refraction, Sign... signs) {
        Measured<Dioptres> now = new Measured<>(Dioptres.of(refraction), Specimen.REFRACTION);
        return Cases.ordinary()
                .measured(eye -> eye.powers(45, 45))
                .signs(signs)
                .recorded(new OtherReadings(Optional.of(now), Optional.empty(), List.of()));
    }

    private static List<Finding> notes(Cases given) {
        return Cases.plan(given).findings().stream()
                .filter(finding -> finding.code() == ADDED_LENS)
                .toList();
    }

    private static double power(Finding note) {
        Matcher matcher = POWER.matcher(note.message());
        assertThat(matcher.find()).as(note.message()).isTrue();
        return Double.parseDouble(matcher.group(1));
    }

    /** Holladay, Am J Ophthalmol 1993;116:63-66, aphakic example: K 45.00 D, 12.00 D at 14 mm, target -0.50 D, lens at 5.00 mm. */
    @Test
    void an_aphakic_eye_needs_what_the_worked_example_says() {
        Cases aphakic =
                refracted(TWELVE_AT_14_MM, Sign.APHAKIA).aimingAt(TARGET).catalogue(Lenses.bag(), at(5.00));
        assertThat(notes(aphakic)).singleElement().satisfies(note -> {
            assertThat(power(note)).isCloseTo(22.90, within(0.02));
            assertThat(note.message()).contains("the chamber lens in the anterior chamber");
            assertThat(note.evidence()).containsExactly(Specimen.REFRACTION);
        });
    }

    /** The pseudophakic example: 5.00 D at 14 mm, the rest the same. */
    @Test
    void an_eye_with_a_lens_needs_what_the_worked_example_says() {
        Cases pseudophakic = refracted(moved(5, 0.014, 0.012), Sign.PSEUDOPHAKIA)
                .aimingAt(TARGET)
                .catalogue(Lenses.bag(), at(5.00));
        assertThat(notes(pseudophakic)).singleElement().satisfies(note -> assertThat(power(note))
                .isCloseTo(8.64, within(0.02)));
    }

    @ParameterizedTest
    @EnumSource(
            value = Sign.class,
            names = {"APHAKIA", "PSEUDOPHAKIA"})
    void the_plan_stays_withheld(Sign out) {
        EyePlan plan = Cases.plan(refracted(5, out));
        assertThat(plan.state()).isEqualTo(PlanState.WITHHELD);
        assertThat(plan.lens()).isEmpty();
        assertThat(plan.findings()).extracting(Finding::code).contains(LENS_ALREADY_OUT, ADDED_LENS);
    }

    @Test
    void the_sulcus_and_the_anterior_chamber_each_have_their_note() {
        assertThat(notes(refracted(12, Sign.APHAKIA)))
                .hasSize(2)
                .anyMatch(note -> note.message().contains("in the sulcus"))
                .anyMatch(note -> note.message().contains("in the anterior chamber"));
    }

    @Test
    void without_a_refraction_there_is_nothing_to_say() {
        assertThat(notes(Cases.ordinary().signs(Sign.APHAKIA))).isEmpty();
    }

    @Test
    void an_eye_with_its_natural_lens_has_no_note() {
        assertThat(notes(refracted(-3))).isEmpty();
    }

    @Test
    void a_cornea_nobody_can_judge_has_no_note() {
        assertThat(notes(refracted(12, Sign.APHAKIA, Sign.CORNEA_INCISED))).isEmpty();
    }
}
