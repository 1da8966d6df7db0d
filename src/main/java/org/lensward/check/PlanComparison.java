package org.lensward.check;

import static org.lensward.finding.FindingCode.CHECK_DAY_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_PLAN_DIFFERS;

import java.util.Optional;
import java.util.stream.Stream;

/** The plan's sheet in hand is of this very plan, and today is its day. */
final class PlanComparison {

    private PlanComparison() {}

    static Stream<Difference> of(Situation here) {
        Expected expected = here.expected();
        Optional<String> sheet = here.presented().plan();
        Stream<Difference> plan = sheet.filter(expected::isNamed).isPresent()
                ? Stream.empty()
                : Stream.of(new Difference(
                        CHECK_PLAN_DIFFERS,
                        "plan",
                        expected.fingerprint().substring(0, Expected.PRINTED),
                        Situation.said(sheet)));
        return Stream.concat(
                plan,
                here.where(
                        Comparison.DAY,
                        Situation.unequal(
                                CHECK_DAY_DIFFERS,
                                "day",
                                expected.operation(),
                                Optional.of(here.presented().at().toLocalDate()))));
    }
}
