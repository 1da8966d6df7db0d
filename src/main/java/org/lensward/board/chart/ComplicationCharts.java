package org.lensward.board.chart;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.lensward.outcome.complication.FunnelLimits;
import org.lensward.outcome.complication.SeriesPoint;

/** Ruptured capsules against what was to be expected. */
public final class ComplicationCharts {

    private ComplicationCharts() {}

    /**
     * A unit or a surgeon in the funnel.
     *
     * @param name key, such as {@code Practitioner/s1}
     * @param operations counted
     * @param ruptures adjusted for the eyes: observed by expected times the standard rate times operations
     */
    public record Dot(String name, long operations, double ruptures) {}

    /** Counts against exact limits. */
    public static Chart funnel(List<FunnelLimits> limits, List<Dot> dots) {
        XYSeriesCollection data = new XYSeriesCollection();
        data.addSeries(percent("95 %", limits, FunnelLimits::upperWarning));
        data.addSeries(percent("99.9 %", limits, FunnelLimits::upperAlarm));
        XYSeries units = new XYSeries("units");
        dots.forEach(dot -> units.add(dot.operations(), 100 * dot.ruptures() / dot.operations()));
        data.addSeries(units);
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setSeriesPaint(0, Drawing.DEEP);
        renderer.setSeriesStroke(0, Drawing.DASHED);
        renderer.setSeriesPaint(1, Drawing.WARN);
        renderer.setSeriesStroke(1, Drawing.LINE);
        renderer.setSeriesPaint(2, Drawing.INK);
        renderer.setSeriesLinesVisible(2, false);
        renderer.setSeriesShapesVisible(2, true);
        XYPlot plot =
                Drawing.plot(data, new NumberAxis("Operations"), new NumberAxis("Ruptured capsules, %"), renderer);
        return Drawing.chart(
                "funnel",
                "Capsule rupture by number of operations",
                "Each dot is a surgeon, adjusted for the risk of the eyes. Dashed: the upper 95 % limit, a warning; solid: the upper"
                        + " 99.9 % limit, an alarm. Dots on or below a line are common variation. Few operations tell little.",
                plot,
                new Chart.Table(
                        List.of("Surgeon", "Operations", "Ruptures, adjusted"),
                        dots.stream()
                                .map(dot -> List.of(
                                        dot.name(),
                                        Long.toString(dot.operations()),
                                        String.format(Locale.ROOT, "%.1f", dot.ruptures())))
                                .toList()));
    }

    private static XYSeries percent(String name, List<FunnelLimits> limits, ToDoubleFunction<FunnelLimits> count) {
        XYSeries series = new XYSeries(name);
        limits.forEach(each -> series.add(each.operations(), 100 * count.applyAsDouble(each) / each.operations()));
        return series;
    }

    /** Both arms of the cumulative sum, operation by operation. */
    public static Chart cusum(List<SeriesPoint> points, double upper, double lower) {
        XYSeries worse = new XYSeries("worse");
        XYSeries better = new XYSeries("better");
        points.forEach(point -> {
            worse.add(point.number(), point.worse().value());
            better.add(point.number(), point.better().value());
        });
        XYSeriesCollection data = new XYSeriesCollection(worse);
        data.addSeries(better);
        long last = points.stream().mapToLong(SeriesPoint::number).max().orElse(1);
        data.addSeries(level("limit of worse", last, upper));
        data.addSeries(level("limit of better", last, lower));
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setSeriesPaint(0, Drawing.WARN);
        renderer.setSeriesStroke(0, Drawing.LINE);
        renderer.setSeriesPaint(1, Drawing.DEEP);
        renderer.setSeriesStroke(1, Drawing.LINE);
        for (int limit = 2; limit <= 3; limit++) {
            renderer.setSeriesPaint(limit, Drawing.INK);
            renderer.setSeriesStroke(limit, Drawing.DOTTED);
        }
        XYPlot plot = Drawing.plot(data, new NumberAxis("Operation"), new NumberAxis("Cumulative sum"), renderer);
        return Drawing.chart(
                "cusum", "Capsule rupture, risk-adjusted cumulative sum", words(points), plot, table(points));
    }

    private static XYSeries level(String name, long last, double at) {
        XYSeries series = new XYSeries(name);
        series.add(1, at);
        series.add(Math.max(2, last), at);
        return series;
    }

    private static String words(List<SeriesPoint> points) {
        long worse = points.stream()
                .filter(each -> each.signal() == SeriesPoint.Signal.WORSE)
                .count();
        long better = points.stream()
                .filter(each -> each.signal() == SeriesPoint.Signal.BETTER)
                .count();
        return "Rising from nought: ruptures come oftener than foretold; falling: less often. Dotted: the limits. Signals of worse: "
                + worse + ", of better: " + better + ".";
    }

    /** Signals, and the last point; the sum itself has as many rows as operations. */
    private static Chart.Table table(List<SeriesPoint> points) {
        long last = points.stream()
                .max(Comparator.comparing(SeriesPoint::number))
                .map(SeriesPoint::number)
                .orElse(0L);
        return new Chart.Table(
                List.of("Operation", "Day", "Worse", "Better", "Signal"),
                points.stream()
                        .filter(each -> each.signal() != SeriesPoint.Signal.NONE || each.number() == last)
                        .map(each -> List.of(
                                Long.toString(each.number()),
                                each.on().toString(),
                                RefractiveCharts.plain(each.worse().value()),
                                RefractiveCharts.plain(each.better().value()),
                                each.signal().toString().toLowerCase(Locale.ROOT)))
                        .toList());
    }
}
