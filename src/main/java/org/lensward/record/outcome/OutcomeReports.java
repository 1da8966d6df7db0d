package org.lensward.record.outcome;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.MeasureReport;
import org.hl7.fhir.r4.model.MeasureReport.MeasureReportGroupComponent;
import org.hl7.fhir.r4.model.MeasureReport.MeasureReportStatus;
import org.hl7.fhir.r4.model.MeasureReport.MeasureReportType;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.outcome.Exclusion;
import org.lensward.outcome.complication.ObservedExpected;
import org.lensward.outcome.error.ErrorSummary;
import org.lensward.outcome.error.Group;
import org.lensward.outcome.error.Within;
import org.lensward.record.Codes;
import org.lensward.record.Evidences;
import org.lensward.record.FormulaCodes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.Unused;
import org.lensward.record.bank.GuardedTransaction;
import org.lensward.record.bank.Signature;

/**
 * What operated eyes say, as MeasureReports of our two Measures and their trail. The ids follow from measure, period and policy: the same
 * study written twice is written once, and one that stands is replaced only in the version that was read.
 */
public final class OutcomeReports {

    private static final String MEASURE = Systems.BASE + "/Measure/";

    /** Resources that could not be used are named up to this number; the rest is counted. */
    private static final int NAMED = 200;

    private final OutcomeStudy study;
    private final Span span;

    private OutcomeReports(OutcomeStudy study, Span span) {
        this.study = study;
        this.span = span;
    }

    /**
     * Of what time, and by whom.
     *
     * @param from first day of operations
     * @param to last day of operations
     * @param reporter who answers for the report, as the record refers to the organisation or person, or a name
     * @param at when
     */
    public record Span(LocalDate from, LocalDate to, String reporter, Instant at) {}

    /** What to ask the record for before writing. */
    public static List<String> questions(OutcomeStudy study, Span span) {
        OutcomeReports reports = new OutcomeReports(study, span);
        return List.of(
                "MeasureReport/" + reports.id("prediction-error"), "MeasureReport/" + reports.id("capsule-rupture"));
    }

    /**
     * One transaction; empty of entries where the record says the same already.
     *
     * @param standing what the record holds of these reports
     */
    public static Bundle transaction(OutcomeStudy study, Span span, Shelf standing) {
        return new OutcomeReports(study, span).transaction(standing);
    }

    private Bundle transaction(Shelf standing) {
        GuardedTransaction transaction = new GuardedTransaction();
        List<MeasureReport> changed = Stream.of(predictionError(), capsuleRupture())
                .filter(report -> standing(report, standing)
                        .filter(old -> same(old, report))
                        .isEmpty())
                .toList();
        for (MeasureReport report : changed) {
            Optional<MeasureReport> old = standing(report, standing);
            if (old.isPresent()) {
                report.getMeta().setVersionId(old.get().getMeta().getVersionId());
                transaction.replace(report);
            } else {
                transaction.create(report);
            }
        }
        if (!changed.isEmpty()) {
            transaction.trail(trail(changed));
        }
        return transaction.bundle();
    }

    private static Optional<MeasureReport> standing(MeasureReport report, Shelf shelf) {
        return shelf.find(MeasureReport.class, new Reference(Shelf.name(report)));
    }

    /** But for the time of writing. */
    private static boolean same(MeasureReport old, MeasureReport report) {
        MeasureReport standing = old.copy();
        standing.setId(report.getIdElement());
        standing.setMeta(report.getMeta());
        standing.setDateElement(report.getDateElement());
        return standing.equalsDeep(report);
    }

    private Provenance trail(List<MeasureReport> reports) {
        Provenance trail = new Provenance();
        reports.forEach(each -> trail.addTarget(new Reference(Shelf.name(each))));
        trail.setRecordedElement(
                new InstantType(Date.from(span.at()), TemporalPrecisionEnum.MILLI, TimeZone.getTimeZone("UTC")));
        trail.addAgent().setWho(reporter());
        trail.addReason(
                new CodeableConcept().setText("Outcome policy " + study.policy().version()));
        return trail;
    }

    private Reference reporter() {
        return Signature.reference(span.reporter());
    }

    private String id(String measure) {
        return measure + "-" + Evidences.digest(span.from() + "|" + span.to() + "|" + span.reporter());
    }

    private MeasureReport report(String measure) {
        MeasureReport report = new MeasureReport();
        report.setId("MeasureReport/" + id(measure));
        report.getMeta().addProfile(Systems.profile("outcome-report"));
        report.setStatus(MeasureReportStatus.COMPLETE);
        report.setType(MeasureReportType.SUMMARY);
        report.setMeasure(MEASURE + measure);
        report.setDateElement(
                new DateTimeType(Date.from(span.at()), TemporalPrecisionEnum.SECOND, TimeZone.getTimeZone("UTC")));
        report.setReporter(reporter());
        report.setPeriod(new Period()
                .setStartElement(new DateTimeType(span.from().toString()))
                .setEndElement(new DateTimeType(span.to().toString())));
        return report;
    }

    private MeasureReport predictionError() {
        MeasureReport report = report("prediction-error");
        List<ErrorSummary> formulas = study.audit().of(Group.EVERYONE);
        MeasureReportGroupComponent first = OutcomeFigures.group(report, "standard-deviation");
        OutcomeFigures.population(first, "initial-population", study.audit().operations());
        OutcomeFigures.population(first, "measure-population", study.audit().counted());
        OutcomeFigures.population(
                first,
                "measure-population-exclusion",
                study.audit().operations() - study.audit().counted());
        for (ErrorSummary each : formulas) {
            CodeableConcept formula = FormulaCodes.concept(each.formula());
            OutcomeFigures.score(first, formula, OutcomeFigures.dioptres(each.deviation(), each.deviationInterval()));
            OutcomeFigures.score(OutcomeFigures.group(report, "mean"), formula, OutcomeFigures.dioptres(each.mean()));
            OutcomeFigures.score(
                    OutcomeFigures.group(report, "mean-absolute"),
                    formula,
                    OutcomeFigures.dioptres(each.raw().meanAbsolute()));
            OutcomeFigures.score(
                    OutcomeFigures.group(report, "median-absolute"),
                    formula,
                    OutcomeFigures.dioptres(each.raw().medianAbsolute()));
            for (Within within : each.raw().within()) {
                OutcomeFigures.code(within.limit())
                        .ifPresent(code -> OutcomeFigures.score(
                                OutcomeFigures.group(report, code), formula, OutcomeFigures.percent(within)));
            }
        }
        leftOut(report);
        return report;
    }

    private void leftOut(MeasureReport report) {
        MeasureReportGroupComponent group = OutcomeFigures.group(report, "excluded");
        study.audit().excluded().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(each -> OutcomeFigures.excluded(group, reason(each.getKey()), each.getValue()));
        study.unused().counts().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(each -> OutcomeFigures.excluded(group, reason(each.getKey()), each.getValue()));
        study.unused().counts().keySet().stream()
                .sorted(Comparator.naturalOrder())
                .flatMap(each -> study.unused().named(each).stream())
                .map(each -> each.resource())
                .distinct()
                .limit(NAMED)
                .forEach(each -> report.addEvaluatedResource(new Reference(each)));
    }

    private static CodeableConcept reason(Exclusion reason) {
        return Codes.concept(Systems.OUTCOME_EXCLUSION, reason.code(), reason.toString());
    }

    private static CodeableConcept reason(Unused.Reason reason) {
        return Codes.concept(Systems.OUTCOME_EXCLUSION, reason.code(), reason.toString());
    }

    private MeasureReport capsuleRupture() {
        MeasureReport report = report("capsule-rupture");
        MeasureReportGroupComponent observed = OutcomeFigures.group(report, "observed");
        study.ruptures().ifPresent(each -> figures(report, observed, each));
        return report;
    }

    private static void figures(MeasureReport report, MeasureReportGroupComponent observed, ObservedExpected ruptures) {
        OutcomeFigures.population(observed, "initial-population", ruptures.operations());
        OutcomeFigures.population(observed, "numerator", ruptures.observed());
        observed.setMeasureScore(OutcomeFigures.number(ruptures.observed()));
        OutcomeFigures.group(report, "expected")
                .setMeasureScore(OutcomeFigures.number(ruptures.expected().value()));
        OutcomeFigures.group(report, "observed-by-expected")
                .setMeasureScore(OutcomeFigures.number(
                        ruptures.ratio().value(),
                        ruptures.interval().low().value(),
                        ruptures.interval().high().value()));
    }
}
