package org.lensward.eye;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.BIOMETRY_BEFORE_EYE_SURGERY;
import static org.lensward.finding.FindingCode.BIOMETRY_EXPIRED;
import static org.lensward.finding.FindingCode.BIOMETRY_OVER_A_YEAR_OLD;
import static org.lensward.finding.FindingCode.DATE_IN_FUTURE;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** How old biometry may be; months are calendar months as java.time counts them. */
class BiometryAgeTest {

    private static final LocalDate OPERATION = LocalDate.of(2026, 3, 16);

    private final QualityGates gates = new QualityGates(Policies.standard());

    private List<Finding> judge(Specimen eye, LocalDate operation) {
        LocalDate measuredOn = eye.biometry().measuredOn();
        return gates.judge(
                eye.biometry(),
                eye.eye(),
                Specimen.ordinary(Laterality.LEFT, measuredOn).eye(),
                operation);
    }

    private List<FindingCode> codes(LocalDate measuredOn, LocalDate operation) {
        return judge(Specimen.ordinary(Laterality.RIGHT, measuredOn), operation).stream()
                .map(Finding::code)
                .toList();
    }

    @Nested
    class Given_biometry {

        @Test
        void of_the_operation_day_it_passes() {
            assertThat(codes(OPERATION, OPERATION)).isEmpty();
        }

        @Test
        void of_the_day_after_its_date_cannot_be_right() {
            assertThat(codes(OPERATION.plusDays(1), OPERATION)).containsExactly(DATE_IN_FUTURE);
        }

        @Test
        void exactly_twelve_months_old_it_passes() {
            assertThat(codes(LocalDate.of(2025, 3, 16), OPERATION)).isEmpty();
        }

        @Test
        void twelve_months_and_a_day_old_it_is_over_a_year() {
            assertThat(codes(LocalDate.of(2025, 3, 15), OPERATION)).containsExactly(BIOMETRY_OVER_A_YEAR_OLD);
        }

        @Test
        void exactly_twenty_four_months_old_it_can_still_be_confirmed() {
            assertThat(codes(LocalDate.of(2024, 3, 16), OPERATION)).containsExactly(BIOMETRY_OVER_A_YEAR_OLD);
        }

        @Test
        void twenty_four_months_and_a_day_old_it_has_expired() {
            assertThat(codes(LocalDate.of(2024, 3, 15), OPERATION)).containsExactly(BIOMETRY_EXPIRED);
        }

        @Test
        void of_a_leap_day_it_is_a_year_old_on_the_last_of_february() {
            LocalDate leapDay = LocalDate.of(2024, 2, 29);
            assertThat(codes(leapDay, LocalDate.of(2025, 2, 28))).isEmpty();
            assertThat(codes(leapDay, LocalDate.of(2025, 3, 1))).containsExactly(BIOMETRY_OVER_A_YEAR_OLD);
        }

        @Test
        void that_expired_the_finding_counts_the_months_and_shows_the_date() {
            Finding finding = judge(Specimen.ordinary(Laterality.RIGHT, LocalDate.of(2023, 12, 31)), OPERATION)
                    .get(0);
            assertThat(finding.message())
                    .isEqualTo("The biometry was measured 26 months before the operation; the policy allows 24.");
            assertThat(finding.evidence()).containsExactly(Specimen.LENGTH.at("effective"));
        }
    }

    @Nested
    class Given_earlier_surgery_of_this_eye {

        private final LocalDate measuredOn = OPERATION.minusMonths(2);
        private final Specimen eye = Specimen.ordinary(Laterality.RIGHT, measuredOn);

        @Test
        void before_the_biometry_nothing_is_said() {
            assertThat(judge(eye.operatedOn(Optional.of(measuredOn.minusDays(1))), OPERATION))
                    .isEmpty();
        }

        @Test
        void on_the_day_of_the_biometry_the_order_is_unknown_and_it_is_refused() {
            assertThat(judge(eye.operatedOn(Optional.of(measuredOn)), OPERATION))
                    .extracting(Finding::code)
                    .containsExactly(BIOMETRY_BEFORE_EYE_SURGERY);
        }

        @Test
        void after_the_biometry_it_is_refused_with_both_pieces_of_evidence() {
            Finding finding = judge(eye.operatedOn(Optional.of(measuredOn.plusDays(1))), OPERATION)
                    .get(0);
            assertThat(finding.code()).isEqualTo(BIOMETRY_BEFORE_EYE_SURGERY);
            assertThat(finding.message()).contains("trabeculectomy, " + measuredOn.plusDays(1));
            assertThat(finding.evidence()).containsExactly(Specimen.OPERATION, Specimen.LENGTH.at("effective"));
        }

        @Test
        void without_a_date_it_may_have_come_after_and_the_biometry_is_refused() {
            Finding finding = judge(eye.operatedOn(Optional.empty()), OPERATION).get(0);
            assertThat(finding.code()).isEqualTo(BIOMETRY_BEFORE_EYE_SURGERY);
            assertThat(finding.message()).contains("trabeculectomy, day unknown");
        }

        @Test
        void old_biometry_is_refused_for_both_reasons() {
            Specimen old = Specimen.ordinary(Laterality.RIGHT, OPERATION.minusYears(3));
            assertThat(judge(old.operatedOn(Optional.of(OPERATION.minusYears(1))), OPERATION))
                    .extracting(Finding::code)
                    .containsExactly(BIOMETRY_EXPIRED, BIOMETRY_BEFORE_EYE_SURGERY);
        }
    }
}
