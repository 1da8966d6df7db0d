package org.lensward.risk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.lensward.eye.Laterality;
import org.lensward.eye.Sex;
import org.lensward.eye.Sign;

/** What holds of the rupture risk of anyone. */
class RuptureModelLaws {

    @Provide
    Arbitrary<Candidate> anyone() {
        Arbitrary<Sign[]> present =
                Arbitraries.of(Sign.class).array(Sign[].class).uniqueElements();
        Arbitrary<Sign[]> unknown =
                Arbitraries.of(Sign.class).array(Sign[].class).uniqueElements();
        return Combinators.combine(
                        Arbitraries.integers().between(18, 105),
                        Arbitraries.of(Sex.class),
                        present,
                        unknown,
                        Arbitraries.doubles().between(2, 10).ofScale(1),
                        Arbitraries.doubles().between(19, 34).ofScale(2),
                        Arbitraries.of(SurgeonGrade.class))
                .as((age, sex, signs, silent, pupil, length, grade) -> Candidate.reference()
                        .age(age)
                        .sex(sex)
                        .with(signs)
                        .silentAbout(silent)
                        .pupil(pupil)
                        .length(length)
                        .surgeon(grade))
                .withoutEdgeCases();
    }

    @Property
    void the_probability_lies_between_the_baseline_and_one(@ForAll("anyone") Candidate anyone) {
        assertThat(anyone.risk().probability().value()).isBetween(0.0075 - 1e-12, 1.0);
    }

    /** Odds to probability and back: odds = C p0 / (1 - p0), never p = C p0. */
    @Property
    void the_odds_are_the_ratio_times_those_of_the_baseline(@ForAll("anyone") Candidate anyone) {
        double p = anyone.risk().probability().value();
        assertThat(p / (1 - p)).isCloseTo(anyone.odds() * 0.0075 / 0.9925, within(1e-9));
    }

    @Property
    void one_more_sign_never_lowers_the_risk(@ForAll("anyone") Candidate anyone, @ForAll Sign more) {
        assertThat(anyone.with(more).odds()).isGreaterThanOrEqualTo(anyone.odds() - 1e-9);
    }

    @Property
    void growing_old_never_lowers_the_risk(@ForAll("anyone") Candidate anyone, @ForAll @IntRange(max = 40) int years) {
        int age = anyone.age().orElseThrow();
        assertThat(anyone.age(age + years).odds()).isGreaterThanOrEqualTo(anyone.odds() - 1e-9);
    }

    @Property
    void no_surgeon_lowers_the_risk_below_that_of_an_unnamed_one(@ForAll("anyone") Candidate anyone) {
        assertThat(anyone.odds()).isGreaterThanOrEqualTo(anyone.withoutSurgeon().odds() - 1e-9);
    }

    @Property
    void a_fact_never_mentioned_weighs_as_much_as_one_denied_but_is_listed(
            @ForAll("anyone") Candidate anyone, @ForAll Sign sign) {
        Candidate silent = anyone.silentAbout(sign);
        RuptureRisk risk = silent.risk();
        assertThat(risk.factors()).extracting(RiskFactor::words).doesNotContain(sign.toString());
        boolean counted = anyone.with(sign).odds() > silent.odds() + 1e-9;
        assertThat(risk.unknown().contains(sign.toString()) || !counted).isTrue();
    }

    @Property
    void right_and_left_run_the_same_risk(@ForAll("anyone") Candidate anyone) {
        assertThat(anyone.side(Laterality.LEFT).risk())
                .isEqualTo(anyone.side(Laterality.RIGHT).risk());
    }

    @Property
    void the_ratio_is_the_product_of_the_factors_shown(@ForAll("anyone") Candidate anyone) {
        List<RiskFactor> factors = anyone.risk().factors();
        double product = factors.stream()
                .mapToDouble(factor -> factor.oddsRatio().value())
                .reduce(1, (a, b) -> a * b);
        assertThat(anyone.odds()).isCloseTo(product, within(1e-9));
    }
}
