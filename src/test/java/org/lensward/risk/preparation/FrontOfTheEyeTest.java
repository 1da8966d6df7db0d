package org.lensward.risk.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.CLOTTING_TOO_SLOW;
import static org.lensward.finding.FindingCode.CLOTTING_UNKNOWN;
import static org.lensward.risk.preparation.Patient.OPERATION;
import static org.lensward.risk.preparation.Patient.ordinary;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Allergen;
import org.lensward.eye.Histories;
import org.lensward.eye.Laterality;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Finding;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/** Bleeding, pressure, chamber, pupil, endothelium and lids. Thresholds: common practice, no source. */
class FrontOfTheEyeTest {

    @Nested
    class Given_warfarin {

        private final Patient patient = ordinary().with(Sign.WARFARIN);

        private Patient clotting(double ratio, int daysBefore) {
            return patient.examined(Examined.ordinary().clotting(ratio, OPERATION.minusDays(daysBefore)));
        }

        @Test
        void without_a_figure_it_is_a_condition_and_the_drug_goes_on() {
            Finding finding = patient.prepared().findings().get(0);
            assertThat(finding.code()).isEqualTo(CLOTTING_UNKNOWN);
            assertThat(finding.message()).isEqualTo("The patient takes warfarin, and no INR is recorded.");
            Precaution bleeding = patient.precaution(Topic.BLEEDING);
            assertThat(bleeding.action())
                    .isEqualTo("Warfarin goes on; measure the INR within 3 days before the operation.");
            assertThat(bleeding.unknown()).containsExactly("the INR near the operation");
        }

        @Test
        void a_figure_in_range_settles_it() {
            assertThat(clotting(3.0, 3).prepared().findings()).isEmpty();
            Precaution bleeding = clotting(2.4, 1).precaution(Topic.BLEEDING);
            assertThat(bleeding.action()).isEqualTo("Warfarin goes on; the INR is in range.");
            assertThat(bleeding.reasons()).containsExactly("warfarin", "INR 2.4");
        }

        @Test
        void a_figure_above_it_defers() {
            Finding finding = clotting(3.1, 1).prepared().findings().get(0);
            assertThat(finding.code()).isEqualTo(CLOTTING_TOO_SLOW);
            assertThat(finding.message()).isEqualTo("The INR of 3.1 is above 3.");
            assertThat(clotting(3.1, 1).precaution(Topic.BLEEDING).action()).startsWith("Defer");
        }

        @Test
        void a_figure_too_old_or_of_the_future_counts_as_none() {
            assertThat(clotting(2.4, 4).prepared().findings())
                    .extracting(Finding::message)
                    .containsExactly("The patient takes warfarin, and the INR will be 4 days old, more than 3.");
            assertThat(clotting(2.4, -1).prepared().findings())
                    .extracting(Finding::message)
                    .containsExactly("The patient takes warfarin, and the INR is dated after the operation.");
        }
    }

    @Test
    void aspirin_goes_on_and_a_direct_anticoagulant_is_timed() {
        assertThat(ordinary()
                        .with(Sign.ANTIPLATELET_DRUG, Sign.DIRECT_ANTICOAGULANT)
                        .precaution(Topic.BLEEDING)
                        .action())
                .contains("Aspirin and other antiplatelet drugs go on.", "local policy, not stopped unasked");
        assertThat(ordinary().on(Topic.BLEEDING)).isEmpty();
        assertThat(ordinary()
                        .silentAbout(Sign.WARFARIN)
                        .precaution(Topic.BLEEDING)
                        .action())
                .isEqualTo("Find out: whether the patient takes warfarin.");
    }

    @Nested
    class Given_raised_pressure {

        private final Patient patient = ordinary().examined(Examined.ordinary().pressure(22));

        @Test
        void it_is_lowered_before_the_eye_is_opened() {
            Precaution before = patient.precaution(Topic.PRESSURE_BEFORE);
            assertThat(before.action()).contains("acetazolamide 500 mg", "measure it again");
            assertThat(before.reasons()).containsExactly("pressure 22 mmHg above 21 mmHg");
            assertThat(before.bring()).extracting(Bring::item).containsExactly(TheatreItem.PRESSURE_LOWERING_DRUG);
        }

        @Test
        void glaucoma_and_great_age_are_named_beside_it() {
            assertThat(patient.age(90)
                            .with(Sign.GLAUCOMA)
                            .precaution(Topic.PRESSURE_BEFORE)
                            .reasons())
                    .contains("glaucoma", "age 90");
            assertThat(patient.age(89).precaution(Topic.PRESSURE_BEFORE).reasons())
                    .hasSize(1);
        }
    }

    @Test
    void ordinary_pressure_is_left_alone_and_unknown_pressure_is_measured() {
        assertThat(ordinary().examined(Examined.ordinary().pressure(21)).on(Topic.PRESSURE_BEFORE))
                .isEmpty();
        assertThat(ordinary()
                        .examined(Examined.nothing())
                        .precaution(Topic.PRESSURE_BEFORE)
                        .action())
                .isEqualTo("Find out: pressure.");
    }

    @Test
    void a_swollen_lens_in_a_shallow_chamber_asks_for_lower_pressure() {
        Patient shallow = ordinary().with(Sign.SWOLLEN_LENS).depth(2.4);
        assertThat(shallow.precaution(Topic.PRESSURE_BEFORE).reasons())
                .containsExactly("swollen lens in a shallow chamber of 2.4 mm");
        assertThat(shallow.precaution(Topic.PRESSURE_BEFORE).evidence())
                .containsExactly(Specimen.DEPTH, Histories.evidence(Sign.SWOLLEN_LENS));
        assertThat(ordinary().with(Sign.SWOLLEN_LENS).depth(2.5).on(Topic.PRESSURE_BEFORE))
                .isEmpty();
    }

    @Test
    void a_shallow_chamber_is_deepened() {
        Precaution chamber = ordinary().depth(2.49).precaution(Topic.CHAMBER);
        assertThat(chamber.action()).contains("sodium hyaluronate of high viscosity");
        assertThat(chamber.bring()).extracting(Bring::item).containsExactly(TheatreItem.COHESIVE_VISCOELASTIC);
        assertThat(ordinary().depth(2.50).on(Topic.CHAMBER)).isEmpty();
        assertThat(ordinary().unmeasured().precaution(Topic.CHAMBER).action())
                .isEqualTo("Find out: anterior chamber depth.");
    }

    @Test
    void after_an_earlier_spike_the_pressure_is_watched() {
        assertThat(ordinary().on(Topic.PRESSURE_AFTER)).isEmpty();
        assertThat(ordinary()
                        .with(Sign.PRESSURE_SPIKE_BEFORE)
                        .precaution(Topic.PRESSURE_AFTER)
                        .action())
                .contains("timolol", "at 2 to 3 hours");
        assertThat(ordinary()
                        .silentAbout(Sign.GLAUCOMA)
                        .precaution(Topic.PRESSURE_AFTER)
                        .bring())
                .isEmpty();
    }

    /** Wang et al., Front Med 2022;9:941130, 25 studies of 6488 cases (abstract read). */
    @ParameterizedTest
    @CsvSource({"TAMSULOSIN, 13.85", "TERAZOSIN, 8.94", "ALFUZOSIN, 7.73", "DOXAZOSIN, 3.88", "OTHER_ALPHA_BLOCKER, ''"
    })
    void an_alpha_blocker_once_taken_prepares_for_a_floppy_iris(Sign drug, String risk) {
        Precaution pupil = ordinary().with(drug).precaution(Topic.PUPIL);
        assertThat(pupil.reasons())
                .singleElement()
                .asString()
                .startsWith(drug.toString())
                .contains(risk);
        assertThat(pupil.bring())
                .extracting(Bring::item)
                .containsExactly(TheatreItem.INTRACAMERAL_MYDRIATIC, TheatreItem.IRIS_HOOKS, TheatreItem.PUPIL_RING);
    }

    @Test
    void a_small_pupil_is_prepared_for() {
        assertThat(ordinary().pupil(4.9).precaution(Topic.PUPIL).reasons())
                .containsExactly("dilated pupil 4.9 mm below 5 mm");
        assertThat(ordinary().pupil(5.0).on(Topic.PUPIL)).isEmpty();
        assertThat(ordinary()
                        .silentAbout(Sign.TAMSULOSIN)
                        .precaution(Topic.PUPIL)
                        .action())
                .isEqualTo("Find out: whether the patient ever took tamsulosin.");
    }

    @Nested
    class The_endothelium {

        private String reasons(Patient patient) {
            return String.join(", ", patient.precaution(Topic.ENDOTHELIUM).reasons());
        }

        @Test
        void is_protected_when_few_cells_are_left_or_the_cornea_is_thick() {
            assertThat(reasons(ordinary().examined(Examined.ordinary().cells(999))))
                    .isEqualTo("endothelial density 999 /mm2 below 1000 /mm2");
            assertThat(reasons(ordinary().examined(Examined.ordinary().thickness(0.65))))
                    .isEqualTo("central corneal thickness 0.65 mm above 0.64 mm");
            assertThat(reasons(ordinary().with(Sign.CORNEA_GUTTATA))).isEqualTo("cornea guttata");
            assertThat(reasons(ordinary().depth(2.4))).startsWith("anterior chamber depth 2.4 mm");
        }

        @Test
        void is_left_alone_at_the_limits() {
            assertThat(ordinary()
                            .examined(Examined.ordinary().cells(1000).thickness(0.64))
                            .on(Topic.ENDOTHELIUM))
                    .isEmpty();
        }

        @Test
        void gets_another_viscoelastic_where_hyaluronate_is_not_tolerated() {
            Precaution precaution = ordinary()
                    .with(Sign.CORNEA_GUTTATA)
                    .allergicTo(Allergen.HYALURONATE)
                    .precaution(Topic.ENDOTHELIUM);
            assertThat(precaution.action()).contains("hypromellose 2 %", "later graft");
        }

        @Test
        void is_asked_about_where_nothing_is_recorded() {
            assertThat(ordinary()
                            .examined(Examined.nothing())
                            .precaution(Topic.ENDOTHELIUM)
                            .action())
                    .isEqualTo("Find out: endothelial density; central corneal thickness.");
        }
    }

    @Test
    void infected_lids_defer() {
        assertThat(ordinary().with(Sign.LID_INFECTION).precaution(Topic.LIDS).action())
                .contains("defer");
    }

    @Test
    void a_measurement_without_chamber_depth_asks_for_it() {
        Patient patient = ordinary()
                .measured(Specimen.ordinary(Laterality.RIGHT, OPERATION))
                .with(Sign.SWOLLEN_LENS);
        assertThat(patient.precaution(Topic.CHAMBER).unknown()).containsExactly("anterior chamber depth");
        assertThat(patient.on(Topic.PRESSURE_BEFORE)).isEmpty();
    }
}
