package org.lensward.record.outcome;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.MeasureReport;
import org.hl7.fhir.r4.model.MeasureReport.MeasureReportGroupComponent;
import org.hl7.fhir.r4.model.MeasureReport.MeasureReportGroupStratifierComponent;
import org.hl7.fhir.r4.model.MeasureReport.StratifierGroupComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Range;
import org.lensward.outcome.Interval;
import org.lensward.outcome.error.Within;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Systems;

/** The figures of a report: one group for each, a stratum for each formula or reason, the interval beside the score. */
final class OutcomeFigures {

    private static final String INTERVAL = Systems.extension("confidence-interval");
    private static final String POPULATION = "http://terminology.hl7.org/CodeSystem/measure-population";
    private static final int PLACES = 4;

    private OutcomeFigures() {}

    /** The report's group of that figure, made if it is not there yet. */
    static MeasureReportGroupComponent group(MeasureReport report, String figure) {
        return report.getGroup().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.OUTCOME_MEASURE, figure))
                .findFirst()
                .orElseGet(() -> report.addGroup()
                        .setCode(Codes.concept(Systems.OUTCOME_MEASURE, figure, figure.replace('-', ' '))));
    }

    static void population(MeasureReportGroupComponent group, String code, long count) {
        group.addPopulation()
                .setCode(Codes.concept(POPULATION, code, code.replace('-', ' ')))
                .setCount(whole(count));
    }

    static void score(MeasureReportGroupComponent group, CodeableConcept formula, Quantity score) {
        stratum(group, "formula", formula).setMeasureScore(score);
    }

    static void excluded(MeasureReportGroupComponent group, CodeableConcept reason, long count) {
        stratum(group, "reason", reason)
                .addPopulation()
                .setCode(Codes.concept(POPULATION, "measure-population-exclusion", "Measure Population Exclusion"))
                .setCount(whole(count));
    }

    /** FHIR counts in 32 bits. */
    private static int whole(long count) {
        return Math.toIntExact(count);
    }

    private static StratifierGroupComponent stratum(
            MeasureReportGroupComponent group, String by, CodeableConcept value) {
        MeasureReportGroupStratifierComponent stratifier = group.getStratifierFirstRep();
        if (!stratifier.hasCode()) {
            stratifier.addCode(Codes.concept(Systems.OUTCOME_MEASURE, by, by));
        }
        return stratifier.addStratum().setValue(value);
    }

    /** The code of a share within that limit; empty for a limit that the code system does not have. */
    static Optional<String> code(Dioptres limit) {
        return Optional.of(
                        String.format(Locale.ROOT, "within-%.2f", limit.value()).replace('.', '-'))
                .filter(code -> code.matches("within-(0-25|0-50|0-75|1-00)"));
    }

    static Quantity dioptres(Dioptres value) {
        return quantity(value.value(), "[diop]");
    }

    static Quantity dioptres(Dioptres value, Interval<Dioptres> interval) {
        return within(dioptres(value), dioptres(interval.low()), dioptres(interval.high()));
    }

    static Quantity percent(Within share) {
        return within(
                quantity(100 * share.share().value(), "%"),
                quantity(100 * share.interval().low().value(), "%"),
                quantity(100 * share.interval().high().value(), "%"));
    }

    static Quantity number(double value) {
        return quantity(value, "1");
    }

    static Quantity number(double value, double low, double high) {
        return within(number(value), number(low), number(high));
    }

    private static Quantity within(Quantity value, Quantity low, Quantity high) {
        value.addExtension(INTERVAL, new Range().setLow(low).setHigh(high));
        return value;
    }

    private static Quantity quantity(double value, String unit) {
        return new Quantity()
                .setValue(BigDecimal.valueOf(value).setScale(PLACES, RoundingMode.HALF_EVEN))
                .setSystem(Systems.UCUM)
                .setCode(unit);
    }
}
