package org.lensward.outcome.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.outcome.Operated.POLICY;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lensward.lens.LensSite;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.outcome.Exclusion;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.Operated;
import org.lensward.outcome.OperatedEyes;
import org.lensward.outcome.SimulatedEyes;
import org.lensward.quantity.PureNumber;

/** Simulated eyes whose scatter and mean error are known. */
class RefractiveAuditTest {

    private static final LensConstants USED = LensConstants.ofAConstant(PureNumber.of(118.7));

    private static SimulatedEyes eyes(int parts) {
        return new SimulatedEyes(new SimulatedEyes.Law(FormulaName.HOLLADAY_1, USED), USED, 0.4, 6000, parts, 3);
    }

    private static AuditReport report(OperatedEyes eyes) {
        return EyeTally.over(eyes, POLICY, () -> new RefractiveAudit(POLICY.groups()))
                .report();
    }

    @Test
    void the_formula_that_holds_scatters_as_the_noise_and_stands_first() {
        List<ErrorSummary> all = report(eyes(1)).of(Group.EVERYONE);
        ErrorSummary best = all.get(0);
        assertThat(all).hasSize(5).isSortedAccordingTo((a, b) -> a.deviation().compareTo(b.deviation()));
        assertThat(best.formula()).isEqualTo(FormulaName.HOLLADAY_1);
        assertThat(best.deviation().value()).isCloseTo(0.4, within(4 * 0.4 / Math.sqrt(2 * 5900)));
        assertThat(best.deviationInterval().low().value()).isLessThan(0.4);
        assertThat(best.deviationInterval().high().value()).isGreaterThan(0.4);
        assertThat(best.mean().value()).isCloseTo(0, within(4 * 0.4 / Math.sqrt(5900)));
    }

    @Test
    void parts_do_not_matter() {
        AuditReport one = report(eyes(1));
        AuditReport many = report(eyes(7));
        assertThat(many.excluded()).isEqualTo(one.excluded());
        assertThat(many.eyes()).isEqualTo(one.eyes());
        for (int each = 0; each < 5; each++) {
            ErrorSummary a = one.of(Group.EVERYONE).get(each);
            ErrorSummary b = many.of(Group.EVERYONE).get(each);
            assertThat(b.raw().within()).isEqualTo(a.raw().within());
            assertThat(b.deviation().value()).isCloseTo(a.deviation().value(), within(1e-9));
        }
    }

    @Test
    void every_eye_is_counted_or_left_out_for_one_reason() {
        AuditReport report = report(eyes(2));
        assertThat(report.operations()).isEqualTo(6000);
        assertThat(report.excluded()).containsOnlyKeys(Exclusion.COMPLICATED);
        assertThat(report.counted() + report.excluded().getOrDefault(Exclusion.COMPLICATED, 0L))
                .isEqualTo(6000);
        for (Group.By by : Group.By.values()) {
            assertThat(report.eyes().entrySet().stream()
                            .filter(each -> each.getKey().by() == by)
                            .mapToLong(each -> each.getValue())
                            .sum())
                    .as(by.toString())
                    .isEqualTo(report.counted());
        }
        assertThat(report.eyes().keySet())
                .extracting(Group::name)
                .contains("below 22.00 mm", "from 22.00 below 24.50 mm", "from 26.00 mm", "light", "model-b");
    }

    @Test
    void a_group_of_a_few_shows_its_number_alone() {
        AuditReport report = report(OperatedEyes.of(List.of(Operated.ordinary().eye())));
        assertThat(report.eyes()).containsEntry(Group.EVERYONE, 1L);
        assertThat(report.of(Group.EVERYONE)).isEmpty();
        assertThat(report.of(new Group(Group.By.SURGEON, "nobody"))).isEmpty();
    }

    @Test
    void no_eye_at_all_is_a_report_too() {
        AuditReport none = report(OperatedEyes.of(List.of()));
        assertThat(none.operations()).isZero();
        AuditReport left = report(OperatedEyes.of(
                List.of(Operated.ordinary().site(Optional.of(LensSite.SULCUS)).eye())));
        assertThat(left.excluded()).containsEntry(Exclusion.NOT_IN_THE_BAG, 1L);
        assertThat(left.counted()).isZero();
    }

    @Test
    void a_policy_without_bands_has_one() {
        assertThat(LengthBands.of(List.of()).bands()).hasSize(1);
    }
}
