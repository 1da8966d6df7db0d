package org.lensward.risk.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.LENS_TYPE_DOUBTFUL;
import static org.lensward.finding.FindingCode.LENS_TYPE_UNSUITABLE;
import static org.lensward.risk.preparation.Patient.OPERATION;
import static org.lensward.risk.preparation.Patient.ordinary;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Histories;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.OtherReadings;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Severity;
import org.lensward.lens.Focus;
import org.lensward.lens.LensDesign;
import org.lensward.lens.LensModel;
import org.lensward.lens.Lenses;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** Which kind of lens suits which eye; common practice, no source. */
class LensTypesTest {

    private static final Patient ASTIGMATIC =
            ordinary().measured(Specimen.ordinary(Laterality.RIGHT, OPERATION).powers(42, 44));

    private static Judgement judged(Patient patient, LensType type) {
        return judged(patient.prepared(), type);
    }

    private static Judgement judged(Preparation prepared, LensType type) {
        return prepared.lensTypes().stream()
                .filter(each -> each.type() == type)
                .findFirst()
                .orElseThrow()
                .judgement();
    }

    @Test
    void every_kind_is_judged_and_names_its_source() {
        assertThat(ordinary().prepared().lensTypes())
                .extracting(Suitability::type)
                .containsExactly(LensType.values());
        assertThat(ordinary().prepared().lensTypes())
                .allSatisfy(each -> assertThat(each.source()).isNotBlank());
    }

    @Test
    void a_monofocal_lens_suits_even_an_eye_of_which_nothing_is_known() {
        assertThat(judged(Patient.unknown(), LensType.MONOFOCAL).verdict()).isEqualTo(Verdict.SUITS);
    }

    @ParameterizedTest
    @CsvSource({
        "MACULOPATHY, MULTIFOCAL",
        "MACULOPATHY, EXTENDED_FOCUS",
        "EPIRETINAL_MEMBRANE, MULTIFOCAL",
        "VISUAL_FIELD_LOSS, MULTIFOCAL",
        "VISUAL_FIELD_LOSS, EXTENDED_FOCUS",
        "CORNEA_IRREGULAR, MULTIFOCAL",
        "CORNEA_IRREGULAR, TORIC",
        "KERATOCONUS, TORIC",
        "PHACODONESIS, TORIC",
        "DRIVES_AT_NIGHT, MULTIFOCAL",
        "DRIVES_AT_NIGHT, EXTENDED_FOCUS"
    })
    void a_sign_forbids_a_kind_and_is_its_reason(Sign sign, LensType type) {
        assertThat(judged(ASTIGMATIC, type).verdict()).isEqualTo(Verdict.SUITS);
        Judgement judgement = judged(ASTIGMATIC.with(sign), type);
        assertThat(judgement.verdict()).isEqualTo(Verdict.DOES_NOT_SUIT);
        assertThat(judgement.reasons()).containsExactly(sign.toString());
        assertThat(judgement.evidence()).containsExactly(Histories.evidence(sign));
    }

    @Test
    void a_sign_may_only_speak_against_a_kind() {
        assertThat(judged(ordinary().with(Sign.CORNEA_GUTTATA), LensType.MULTIFOCAL)
                        .verdict())
                .isEqualTo(Verdict.DOUBTFUL);
    }

    @Test
    void an_unknown_macula_asks_for_its_picture() {
        Judgement judgement = judged(ordinary().silentAbout(Sign.MACULOPATHY), LensType.MULTIFOCAL);
        assertThat(judgement.verdict()).isEqualTo(Verdict.UNKNOWN);
        assertThat(judgement.unknown()).containsExactly("maculopathy (OCT of the macula)");
    }

    @Test
    void missing_zonule_forbids_every_kind_that_needs_the_bag() {
        Preparation prepared = ASTIGMATIC.examined(Examined.ordinary().lost(1)).prepared();
        assertThat(judged(prepared, LensType.MULTIFOCAL).verdict()).isEqualTo(Verdict.DOES_NOT_SUIT);
        assertThat(judged(prepared, LensType.TORIC).reasons()).containsExactly("1 clock hours of zonule missing");
        assertThat(judged(prepared, LensType.MONOFOCAL).verdict()).isEqualTo(Verdict.SUITS);
    }

    @Test
    void a_decentred_opening_makes_a_lens_that_shares_the_light_doubtful() {
        assertThat(judged(ordinary().examined(Examined.ordinary().opening(5.2, 0.4)), LensType.MULTIFOCAL)
                        .reasons())
                .containsExactly("capsule opening decentred by 0.4 mm");
        assertThat(judged(ordinary().examined(Examined.ordinary().opening(5.2, 0.3)), LensType.MULTIFOCAL)
                        .verdict())
                .isEqualTo(Verdict.SUITS);
    }

    @Nested
    class A_toric_lens {

        @Test
        void needs_astigmatism() {
            assertThat(judged(ordinary(), LensType.TORIC).reasons())
                    .containsExactly("corneal astigmatism 0.5 D below 1 D");
            assertThat(judged(ordinary().unmeasured(), LensType.TORIC).unknown())
                    .containsExactly("keratometry");
        }

        @Test
        void needs_a_meridian() {
            Keratometry without = new Keratometry(Millimetres.of(8.0), Millimetres.of(7.6), Optional.empty());
            Patient patient = ordinary()
                    .measured(Specimen.ordinary(Laterality.RIGHT, OPERATION).cornea(without));
            assertThat(judged(patient, LensType.TORIC).unknown()).containsExactly("steep meridian of the cornea");
        }

        @Test
        void needs_steady_readings() {
            assertThat(judged(scattering(0.3), LensType.TORIC).verdict()).isEqualTo(Verdict.DOUBTFUL);
            assertThat(judged(scattering(0.2), LensType.TORIC).verdict()).isEqualTo(Verdict.SUITS);
        }

        private Preparation scattering(double deviation) {
            Evidence where = new Evidence("Observation/scatter", "1", "value");
            OtherReadings other = new OtherReadings(
                    Optional.empty(),
                    Optional.empty(),
                    List.of(),
                    Optional.of(new Measured<>(Dioptres.of(deviation), where)),
                    Optional.empty(),
                    Optional.empty());
            return new PreparationPlanner(Preparations.policy())
                    .plan(ASTIGMATIC.person(), ASTIGMATIC.eye(other), OPERATION, Optional.empty());
        }
    }

    @Nested
    class The_planned_lens {

        private static LensModel focus(Focus focus) {
            return Lenses.bag().of(new LensDesign(Optional.of(focus), Optional.empty(), Optional.empty()));
        }

        @Test
        void that_suits_is_passed_over_in_silence() {
            assertThat(ordinary().prepared(focus(Focus.MULTIFOCAL)).findings()).isEmpty();
            assertThat(ordinary().prepared(focus(Focus.MONOFOCAL)).findings()).isEmpty();
            assertThat(ordinary().with(Sign.MACULOPATHY).prepared(Lenses.bag()).findings())
                    .isEmpty();
        }

        @Test
        void that_does_not_suit_is_a_condition() {
            Finding finding = ordinary()
                    .with(Sign.MACULOPATHY)
                    .prepared(focus(Focus.EXTENDED))
                    .findings()
                    .get(0);
            assertThat(finding.code()).isEqualTo(LENS_TYPE_UNSUITABLE);
            assertThat(finding.severity()).isEqualTo(Severity.CONDITION);
            assertThat(finding.message())
                    .isEqualTo("The planned lens (extended focus) does not suit this eye: maculopathy.");
            assertThat(finding.evidence())
                    .containsExactly(Lenses.bag().evidence(), Histories.evidence(Sign.MACULOPATHY));
        }

        @Test
        void that_nobody_can_judge_is_a_caution() {
            Finding finding = ordinary()
                    .silentAbout(Sign.MACULOPATHY)
                    .with(Sign.UVEITIS)
                    .prepared(focus(Focus.MULTIFOCAL))
                    .findings()
                    .get(0);
            assertThat(finding.code()).isEqualTo(LENS_TYPE_DOUBTFUL);
            assertThat(finding.message()).endsWith(": uveitis; unknown: maculopathy (OCT of the macula).");
        }

        @Test
        void that_is_toric_must_suit_as_such_too() {
            LensModel bag = Lenses.bag();
            LensModel toric = new LensModel(
                    bag.evidence(),
                    bag.name(),
                    bag.site(),
                    bag.houseLens(),
                    bag.opticDiameter(),
                    bag.ranges(),
                    List.of(Dioptres.of(1.5)),
                    bag.constants(),
                    bag.design());
            assertThat(ordinary().prepared(toric).findings())
                    .extracting(Finding::code)
                    .containsExactly(LENS_TYPE_UNSUITABLE);
            assertThat(ASTIGMATIC.prepared(toric).findings()).isEmpty();
        }
    }

    @Test
    void codes_are_as_the_record_carries_them() {
        assertThat(LensType.EXTENDED_FOCUS.code()).isEqualTo("extended-focus");
        assertThat(Verdict.DOES_NOT_SUIT.code()).isEqualTo("does-not-suit");
        assertThat(Topic.PRESSURE_BEFORE.code()).isEqualTo("pressure-before");
        assertThat(Anaesthetic.SUB_TENON.code()).isEqualTo("sub-tenon");
    }
}
