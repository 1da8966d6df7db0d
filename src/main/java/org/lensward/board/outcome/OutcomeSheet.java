package org.lensward.board.outcome;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.lensward.board.chart.Chart;
import org.lensward.board.chart.ComplicationCharts;
import org.lensward.board.chart.RefractiveCharts;
import org.lensward.finding.Evidence;
import org.lensward.outcome.complication.FunnelLimits;
import org.lensward.outcome.constant.Proposal;
import org.lensward.outcome.error.ErrorSummary;
import org.lensward.outcome.error.Group;
import org.lensward.outcome.error.Within;
import org.lensward.record.FormulaCodes;
import org.lensward.record.outcome.ConstantAdoption;
import org.lensward.record.outcome.OutcomeStudy;

/** A study as the page shows it; names models, surgeons' keys and resources, nobody else. */
public final class OutcomeSheet {

    private static final List<Long> FUNNEL = LongStream.of(20, 50, 100, 150, 200, 300, 400, 500, 700, 1000, 1500, 2000)
            .boxed()
            .toList();

    private final OutcomeStudy study;
    private final List<Chart> charts;

    OutcomeSheet(OutcomeStudy study) {
        this.study = study;
        this.charts = draw();
    }

    public String counts() {
        return study.audit().operations() + " operations"
                + study.period()
                        .map(each -> " from " + each.from() + " to " + each.to())
                        .orElse("") + ", "
                + study.audit().counted() + " counted";
    }

    public String policy() {
        return study.policy().version();
    }

    /** A reason and how many. */
    public record Line(long count, String words, String named) {}

    /** Operations left out, in the order in which reasons are looked at. */
    public List<Line> leftOut() {
        return study.audit().excluded().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(each -> new Line(each.getValue(), each.getKey().toString(), ""))
                .toList();
    }

    /** Resources that could not be used, the first of them named. */
    public List<Line> unused() {
        return study.unused().counts().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(each -> new Line(
                        each.getValue(),
                        each.getKey().toString(),
                        String.join(
                                ", ",
                                study.unused().named(each.getKey()).stream()
                                        .limit(5)
                                        .map(Evidence::resource)
                                        .toList())))
                .toList();
    }

    /** The figures of one formula in one group. */
    public record Row(String group, String eyes, List<String> figures) {}

    /** Standard deviation first. */
    public List<Row> errors() {
        List<Row> rows = new ArrayList<>();
        study.audit().groups().forEach((group, formulas) -> {
            String name = group.equals(Group.EVERYONE) ? "All eyes that count" : group.name();
            String eyes = Long.toString(study.audit().eyes().getOrDefault(group, 0L));
            if (formulas.isEmpty()) {
                rows.add(new Row(name, eyes, List.of("too few to show", "", "", "", "", "", "")));
            }
            formulas.forEach(each -> rows.add(new Row(name, eyes, figures(each))));
        });
        return rows;
    }

    private static List<String> figures(ErrorSummary each) {
        return List.of(
                each.formula().toString(),
                words(
                        "%.2f (%.2f to %.2f)",
                        each.deviation().value(),
                        each.deviationInterval().low().value(),
                        each.deviationInterval().high().value()),
                words("%+.2f", each.mean().value()),
                words("%.2f", each.raw().meanAbsolute().value()),
                words("%.2f", each.raw().medianAbsolute().value()),
                within(each, 0.5),
                within(each, 1));
    }

    private static String within(ErrorSummary summary, double limit) {
        return summary.raw().within().stream()
                .filter(each -> each.limit().value() == limit)
                .findFirst()
                .map(OutcomeSheet::share)
                .orElse("");
    }

    private static String share(Within each) {
        return words(
                "%.1f %% (%.1f to %.1f)",
                100 * each.share().value(),
                100 * each.interval().low().value(),
                100 * each.interval().high().value());
    }

    /**
     * A constant that the eyes suggest.
     *
     * @param name by which it is adopted
     * @param obstacle why it cannot be; empty where it can
     */
    public record Suggested(
            String name, String scope, String formula, long eyes, String now, String then, String obstacle) {}

    public List<Suggested> constants() {
        return study.proposals().stream()
                .filter(ConstantAdoption::isUsual)
                .map(OutcomeSheet::suggested)
                .toList();
    }

    private static Suggested suggested(Proposal each) {
        return new Suggested(
                ConstantAdoption.name(each),
                each.scope().model() + ", " + each.scope().method() + ", "
                        + each.scope().surgeon().orElse("all surgeons"),
                each.formula().toString(),
                each.eyes(),
                FormulaCodes.words(each.published()),
                FormulaCodes.words(each.proposed()),
                ConstantAdoption.obstacle(each).orElse(""));
    }

    /** Ruptures of everyone and of each surgeon. */
    public List<List<String>> ruptures() {
        return Stream.concat(
                        study.ruptures().stream().map(each -> Map.entry("all", each)),
                        study.surgeons().entrySet().stream())
                .map(each -> List.of(
                        each.getKey(),
                        Long.toString(each.getValue().operations()),
                        Long.toString(each.getValue().observed()),
                        words("%.1f", each.getValue().expected().value()),
                        words(
                                "%.2f (%.2f to %.2f)",
                                each.getValue().ratio().value(),
                                each.getValue().interval().low().value(),
                                each.getValue().interval().high().value())))
                .toList();
    }

    public List<Chart> charts() {
        return charts;
    }

    private List<Chart> draw() {
        List<Chart> drawn = new ArrayList<>();
        if (study.audit().counted() > 0) {
            drawn.add(RefractiveCharts.errors(
                    study.pictures().formula(), study.pictures().errors()));
            drawn.add(RefractiveCharts.byLength(
                    study.pictures().formula(), study.pictures().byLength()));
        }
        study.astigmatism()
                .ifPresent(each ->
                        drawn.add(RefractiveCharts.doubleAngle(study.pictures().astigmatism(), each)));
        if (study.ruptures().isPresent()) {
            drawn.add(ComplicationCharts.funnel(limits(), dots()));
        }
        study.course()
                .limits()
                .ifPresent(each -> drawn.add(ComplicationCharts.cusum(
                        study.course().points(),
                        each.worse().value(),
                        each.better().value())));
        return drawn;
    }

    private List<FunnelLimits> limits() {
        return FUNNEL.stream()
                .map(each -> FunnelLimits.at(
                        each, study.policy().complications().standard().value()))
                .toList();
    }

    private List<ComplicationCharts.Dot> dots() {
        return study.surgeons().entrySet().stream()
                .map(each -> new ComplicationCharts.Dot(
                        each.getKey(),
                        each.getValue().operations(),
                        each.getValue().adjusted().value() * each.getValue().operations()))
                .toList();
    }

    private static String words(String format, Object... numbers) {
        return String.format(Locale.ROOT, format, numbers);
    }
}
