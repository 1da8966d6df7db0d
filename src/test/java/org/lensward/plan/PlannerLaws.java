package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Severity;

/** What holds of the plan of any booking. */
class PlannerLaws {

    @Provide
    Arbitrary<Cases> bookings() {
        Arbitrary<Sign[]> signs = Arbitraries.of(Sign.class).array(Sign[].class).ofMaxSize(3);
        Arbitrary<List<Finding>> found = Arbitraries.of(FindingCode.class)
                .map(code -> new Finding(code, "as read", List.of(Cases.BOOKING)))
                .list()
                .ofMaxSize(1);
        return Combinators.combine(
                        Arbitraries.doubles().between(19, 33).ofScale(2),
                        Arbitraries.doubles().between(38, 49).ofScale(2),
                        Arbitraries.frequency(
                                Tuple.of(8, BiometryMethod.OPTICAL), Tuple.of(1, BiometryMethod.CONTACT_ULTRASOUND)),
                        Arbitraries.doubles().between(-4, 1).ofScale(2),
                        Arbitraries.oneOf(Arbitraries.just(new Sign[0]), signs),
                        Arbitraries.oneOf(Arbitraries.just(List.<Finding>of()), found))
                .as((length, power, method, target, present, read) -> Cases.ordinary()
                        .measured(eye ->
                                eye.length(length).powers(power, power + 0.5).by(method))
                        .aimingAt(target)
                        .signs(present)
                        .found(read.toArray(Finding[]::new)))
                .withoutEdgeCases();
    }

    @Property
    void a_lens_is_proposed_exactly_if_nothing_withholds(@ForAll("bookings") Cases given) {
        EyePlan plan = Cases.plan(given);
        boolean withheld = Finding.withhold(plan.findings().stream());
        assertThat(plan.lens().isEmpty()).isEqualTo(withheld);
        assertThat(plan.state() == PlanState.WITHHELD).isEqualTo(withheld);
    }

    @Property
    void a_plan_is_provisional_exactly_if_it_has_conditions(@ForAll("bookings") Cases given) {
        EyePlan plan = Cases.plan(given);
        boolean conditions = plan.findings().stream().anyMatch(each -> each.severity() == Severity.CONDITION);
        assertThat(plan.state() == PlanState.PROVISIONAL)
                .isEqualTo(conditions && plan.lens().isPresent());
    }

    @Property
    void the_same_booking_gives_the_same_plan(@ForAll("bookings") Cases given) {
        assertThat(Cases.plan(given)).isEqualTo(Cases.plan(given));
    }

    @Property
    void the_lens_is_labelled_and_never_hyperopic_of_the_target_under_a_myopic_policy(@ForAll("bookings") Cases given) {
        Cases.plan(given).lens().ifPresent(lens -> {
            assertThat(lens.kit().primary().model().powers())
                    .contains(lens.kit().primary().power());
            assertThat(lens.chosen().predicted().value())
                    .isLessThan(lens.target().value() + 1e-6);
        });
    }

    @Property
    void every_piece_of_evidence_is_in_the_basis(@ForAll("bookings") Cases given) {
        EyePlan plan = Cases.plan(given);
        assertThat(plan.basis())
                .containsAll(plan.findings().stream()
                        .flatMap(finding -> finding.evidence().stream())
                        .map(evidence -> evidence.at(""))
                        .toList());
    }

    @Property
    void what_was_found_while_reading_is_kept(@ForAll("bookings") Cases given) {
        assertThat(Cases.plan(given).findings()).containsAll(given.booked().found());
    }
}
