package org.lensward.risk.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.risk.TheatreItem.ANTERIOR_VITRECTOMY_SET;
import static org.lensward.risk.TheatreItem.CAPSULAR_TENSION_RING;
import static org.lensward.risk.TheatreItem.CAPSULE_HOOKS;
import static org.lensward.risk.TheatreItem.COHESIVE_VISCOELASTIC;
import static org.lensward.risk.TheatreItem.FINE_STAB_BLADE;
import static org.lensward.risk.TheatreItem.NUCLEUS_LOOP;
import static org.lensward.risk.TheatreItem.SECOND_INSTRUMENT;
import static org.lensward.risk.TheatreItem.SUTURED_RING_SEGMENT;
import static org.lensward.risk.preparation.Patient.ordinary;

import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/** The swollen white lens, weak zonules and the nucleus. All common practice, no source, unless said. */
class LensAndSupportTest {

    private static List<TheatreItem> items(Patient patient, Topic topic) {
        return patient.precaution(topic).bring().stream().map(Bring::item).toList();
    }

    @Nested
    class Given_a_swollen_white_lens {

        private final Patient patient = ordinary().with(Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS);

        @Test
        void a_radial_tear_is_prevented() {
            Precaution white = patient.precaution(Topic.WHITE_LENS);
            assertThat(white.action())
                    .startsWith("Against a radial tear:")
                    .contains(
                            "stain", "dense cohesive", "in front of and behind the nucleus", "does not leak", "small");
            assertThat(items(patient, Topic.WHITE_LENS)).containsExactly(COHESIVE_VISCOELASTIC, FINE_STAB_BLADE);
        }

        @Test
        void a_ring_is_at_hand() {
            assertThat(patient.precaution(Topic.ZONULES).reasons()).containsExactly("swollen lens");
            assertThat(items(patient, Topic.ZONULES)).containsExactly(CAPSULAR_TENSION_RING);
        }

        @Test
        void pressure_and_chamber_have_branches_of_their_own() {
            Patient tight = patient.depth(2.2).examined(Examined.ordinary().pressure(28));
            assertThat(tight.prepared().precautions())
                    .extracting(Precaution::topic)
                    .contains(Topic.PRESSURE_BEFORE, Topic.CHAMBER, Topic.WHITE_LENS, Topic.ZONULES, Topic.NUCLEUS);
        }

        @Test
        void without_a_viscoelastic_that_is_tolerated_one_is_asked_for() {
            Patient allergic = patient.allergicTo(Allergen.HYALURONATE);
            assertThat(allergic.precaution(Topic.WHITE_LENS).action()).contains("ask which cohesive viscoelastic");
            assertThat(items(allergic, Topic.NUCLEUS)).containsExactly(SECOND_INSTRUMENT);
        }
    }

    @Test
    void a_white_lens_nobody_judged_is_treated_as_swollen() {
        Precaution white = ordinary()
                .with(Sign.BROWN_OR_WHITE_LENS)
                .silentAbout(Sign.SWOLLEN_LENS)
                .precaution(Topic.WHITE_LENS);
        assertThat(white.action()).startsWith("Until shown not to be swollen: Against a radial tear");
        assertThat(white.unknown()).hasSize(1);
    }

    @Test
    void a_white_lens_that_is_not_swollen_is_stained() {
        assertThat(ordinary()
                        .with(Sign.BROWN_OR_WHITE_LENS)
                        .precaution(Topic.WHITE_LENS)
                        .action())
                .isEqualTo("Stain the capsule as the plan of its opening says.");
        assertThat(ordinary().on(Topic.WHITE_LENS)).isEmpty();
        assertThat(ordinary()
                        .silentAbout(Sign.SWOLLEN_LENS)
                        .precaution(Topic.WHITE_LENS)
                        .action())
                .startsWith("Find out: swollen lens");
    }

    @Nested
    class Weak_zonules {

        @Test
        void up_to_four_clock_hours_are_held_by_a_ring() {
            Patient patient = ordinary().examined(Examined.ordinary().lost(4));
            assertThat(items(patient, Topic.ZONULES))
                    .containsExactly(CAPSULAR_TENSION_RING, CAPSULE_HOOKS, ANTERIOR_VITRECTOMY_SET);
            assertThat(patient.precaution(Topic.ZONULES).action())
                    .contains("Only inside a continuous opening and with the posterior capsule whole");
        }

        @Test
        void beyond_it_is_sutured_and_no_plain_ring_is_brought() {
            Patient patient = ordinary().examined(Examined.ordinary().lost(5));
            assertThat(items(patient, Topic.ZONULES))
                    .containsExactly(SUTURED_RING_SEGMENT, CAPSULE_HOOKS, ANTERIOR_VITRECTOMY_SET);
        }

        @ParameterizedTest
        @EnumSource(names = {"PHACODONESIS", "LENS_DISLOCATION"})
        void seen_to_move_are_supported_at_once(Sign sign) {
            assertThat(items(ordinary().with(sign), Topic.ZONULES)).contains(CAPSULAR_TENSION_RING, CAPSULE_HOOKS);
        }

        @ParameterizedTest
        @EnumSource(
                names = {
                    "PSEUDOEXFOLIATION",
                    "EYE_INJURY",
                    "VITRECTOMY",
                    "HIGH_MYOPIA",
                    "SWOLLEN_LENS",
                    "RETINITIS_PIGMENTOSA",
                    "MARFAN_SYNDROME"
                })
        void only_suspected_put_a_ring_at_hand(Sign sign) {
            assertThat(items(ordinary().with(sign), Topic.ZONULES)).containsExactly(CAPSULAR_TENSION_RING);
        }

        @Test
        void that_will_weaken_further_are_sutured() {
            assertThat(items(ordinary().with(Sign.MARFAN_SYNDROME, Sign.LENS_DISLOCATION), Topic.ZONULES))
                    .contains(SUTURED_RING_SEGMENT)
                    .doesNotContain(CAPSULAR_TENSION_RING);
        }

        @Test
        void that_nobody_looked_at_are_a_question() {
            assertThat(ordinary()
                            .examined(Examined.nothing())
                            .precaution(Topic.ZONULES)
                            .action())
                    .isEqualTo("Find out: clock hours of zonule missing (dilated).");
            assertThat(ordinary().on(Topic.ZONULES)).isEmpty();
        }
    }

    @Nested
    class The_nucleus {

        private Judgement judged(Patient patient, NucleusMethod method) {
            return patient.prepared().nucleus().stream()
                    .filter(each -> each.method() == method)
                    .findFirst()
                    .orElseThrow()
                    .judgement();
        }

        @Test
        void may_always_be_chopped() {
            assertThat(judged(ordinary(), NucleusMethod.CHOP).verdict()).isEqualTo(Verdict.SUITS);
            assertThat(judged(ordinary().examined(Examined.ordinary().lost(2)), NucleusMethod.CHOP)
                            .verdict())
                    .isEqualTo(Verdict.DOUBTFUL);
        }

        @Test
        void is_divided_with_doubt_where_it_must_not_be_turned() {
            assertThat(judged(ordinary(), NucleusMethod.DIVIDE).verdict()).isEqualTo(Verdict.SUITS);
            assertThat(judged(ordinary().with(Sign.POSTERIOR_POLAR_CATARACT), NucleusMethod.DIVIDE)
                            .verdict())
                    .isEqualTo(Verdict.DOUBTFUL);
            assertThat(judged(ordinary().silentAbout(Sign.PHACODONESIS), NucleusMethod.DIVIDE)
                            .verdict())
                    .isEqualTo(Verdict.UNKNOWN);
        }

        @Test
        void takes_a_loop_only_once_opening_and_room_have_been_judged() {
            Judgement loop = judged(ordinary(), NucleusMethod.LOOP);
            assertThat(loop.verdict()).isEqualTo(Verdict.UNKNOWN);
            assertThat(loop.unknown())
                    .containsExactly(
                            "capsule opening (continuous, once it is made), at least 5 mm",
                            "room for 10.5 mm inside the bag (white to white is not read from the record)");
        }

        @Test
        void takes_no_loop_where_zonules_room_or_opening_are_wanting() {
            assertThat(List.of(
                            ordinary().with(Sign.PHACODONESIS),
                            ordinary().with(Sign.POSTERIOR_POLAR_CATARACT),
                            ordinary().examined(Examined.ordinary().lost(1)),
                            ordinary().depth(2.4),
                            ordinary().examined(Examined.ordinary().opening(4.9, 0))))
                    .allSatisfy(patient -> assertThat(
                                    judged(patient, NucleusMethod.LOOP).verdict())
                            .isEqualTo(Verdict.DOES_NOT_SUIT));
            assertThat(judged(ordinary().examined(Examined.ordinary().opening(5, 0)), NucleusMethod.LOOP)
                            .verdict())
                    .isEqualTo(Verdict.UNKNOWN);
            assertThat(judged(ordinary().examined(Examined.nothing()).unmeasured(), NucleusMethod.LOOP)
                            .unknown())
                    .contains("clock hours of zonule missing", "anterior chamber depth, at least 2.5 mm");
        }

        @Test
        void that_is_hard_brings_what_each_way_needs() {
            Patient hard = ordinary().with(Sign.BROWN_OR_WHITE_LENS);
            assertThat(items(hard, Topic.NUCLEUS))
                    .containsExactly(SECOND_INSTRUMENT, COHESIVE_VISCOELASTIC, NUCLEUS_LOOP);
            assertThat(hard.precaution(Topic.NUCLEUS).action())
                    .startsWith("chop: suits. divide: suits. loop: unknown; unknown: capsule opening");
            assertThat(items(hard.with(Sign.PHACODONESIS), Topic.NUCLEUS)).containsExactly(SECOND_INSTRUMENT);
            assertThat(hard.with(Sign.PHACODONESIS).precaution(Topic.NUCLEUS).action())
                    .contains("divide: doubtful (phacodonesis).", "loop: does not suit (phacodonesis)");
        }

        @Test
        void over_a_capsule_that_may_be_open_is_not_turned() {
            assertThat(ordinary()
                            .with(Sign.POSTERIOR_POLAR_CATARACT)
                            .precaution(Topic.NUCLEUS)
                            .action())
                    .startsWith("The posterior capsule may be open: no fluid under the capsule");
            assertThat(ordinary().on(Topic.NUCLEUS)).isEmpty();
        }

        @Test
        void each_way_says_what_it_needs() {
            assertThat(NucleusMethod.CHOP.needs()).containsExactly(SECOND_INSTRUMENT);
            assertThat(NucleusMethod.LOOP.needs()).contains(NUCLEUS_LOOP, COHESIVE_VISCOELASTIC);
        }
    }
}
