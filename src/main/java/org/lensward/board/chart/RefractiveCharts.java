package org.lensward.board.chart;

import java.util.List;
import java.util.Locale;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.renderer.xy.XYBubbleRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYZDataset;
import org.jfree.data.xy.XYBarDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.picture.AstigmatismGrid;
import org.lensward.outcome.picture.ErrorBins;
import org.lensward.outcome.picture.LengthBins;
import org.lensward.outcome.vector.VectorSummary;

/** How eyes ended up against what was foretold. */
public final class RefractiveCharts {

    private static final double WIDEST = 3;

    private RefractiveCharts() {}

    /** Eyes for each quarter dioptre of error. */
    public static Chart errors(FormulaName formula, List<ErrorBins.Bin> bins) {
        XYSeries series = new XYSeries("eyes");
        bins.forEach(bin -> series.add(bin.middle().value(), bin.eyes()));
        XYBarRenderer bars = new XYBarRenderer(0.08);
        bars.setBarPainter(new StandardXYBarPainter());
        bars.setShadowVisible(false);
        bars.setSeriesPaint(0, Drawing.DEEP);
        XYPlot plot = Drawing.plot(
                new XYBarDataset(new XYSeriesCollection(series), 0.25),
                new NumberAxis("Achieved minus predicted, D"),
                whole("Eyes"),
                bars);
        long all = bins.stream().mapToLong(ErrorBins.Bin::eyes).sum();
        long near = bins.stream()
                .filter(bin -> Math.abs(bin.middle().value()) <= 0.5)
                .mapToLong(ErrorBins.Bin::eyes)
                .sum();
        String words = String.format(
                Locale.ROOT,
                "%d eyes; %d of them in the five middle quarter dioptres. The outermost bars hold all beyond 2 D.",
                all,
                near);
        return Drawing.chart(
                "errors",
                "Prediction error, " + formula,
                words,
                plot,
                new Chart.Table(
                        List.of("Error, D", "Eyes"),
                        bins.stream()
                                .map(bin -> List.of(signed(bin.middle().value()), Long.toString(bin.eyes())))
                                .toList()));
    }

    /** Mean error by axial length with one standard deviation either side. */
    public static Chart byLength(FormulaName formula, List<LengthBins.Bin> bins) {
        YIntervalSeries series = new YIntervalSeries("mean");
        bins.forEach(bin -> series.add(
                bin.middle().value(),
                bin.mean().value(),
                bin.mean().value() - bin.deviation().value(),
                bin.mean().value() + bin.deviation().value()));
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        data.addSeries(series);
        DeviationRenderer band = new DeviationRenderer(true, true);
        band.setSeriesPaint(0, Drawing.DEEP);
        band.setSeriesFillPaint(0, Drawing.BAND);
        band.setSeriesStroke(0, Drawing.LINE);
        band.setAlpha(1f);
        NumberAxis across = new NumberAxis("Axial length, mm");
        across.setAutoRangeIncludesZero(false);
        XYPlot plot = Drawing.plot(data, across, new NumberAxis("Error, D"), band);
        return Drawing.chart(
                "by-length",
                "Prediction error by axial length, " + formula,
                "The line is the mean error of eyes of like length, the band one standard deviation either side. Half millimetres with"
                        + " fewer than three eyes are left out.",
                plot,
                new Chart.Table(
                        List.of("Axial length, mm", "Eyes", "Mean error, D", "Standard deviation, D"),
                        bins.stream()
                                .map(bin -> List.of(
                                        plain(bin.middle().value()),
                                        Long.toString(bin.eyes()),
                                        signed(bin.mean().value()),
                                        plain(bin.deviation().value())))
                                .toList()));
    }

    /** Astigmatism after surgery in the double-angle plane, with its centroid and where 95 % of eyes are to be expected. */
    public static Chart doubleAngle(List<AstigmatismGrid.Cell> cells, VectorSummary summary) {
        DefaultXYZDataset dots = new DefaultXYZDataset();
        long most = cells.stream().mapToLong(AstigmatismGrid.Cell::eyes).max().orElse(1);
        dots.addSeries("eyes", new double[][] {
            cells.stream().mapToDouble(each -> each.at().x().value()).toArray(),
            cells.stream().mapToDouble(each -> each.at().y().value()).toArray(),
            cells.stream()
                    .mapToDouble(each -> 0.22 * Math.sqrt((double) each.eyes() / most))
                    .toArray()
        });
        XYBubbleRenderer bubbles = new XYBubbleRenderer(XYBubbleRenderer.SCALE_ON_DOMAIN_AXIS);
        bubbles.setSeriesPaint(0, Drawing.BAND);
        XYPlot plot = Drawing.plot(
                dots,
                plane("x: against the rule to the right, with the rule to the left, D"),
                plane("y: oblique, D"),
                bubbles);
        plot.setDataset(1, outline(summary));
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
        lines.setSeriesPaint(0, Drawing.DEEP);
        lines.setSeriesStroke(0, Drawing.DASHED);
        lines.setSeriesPaint(1, Drawing.WARN);
        lines.setSeriesShapesVisible(1, true);
        plot.setRenderer(1, lines);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        String words = String.format(
                Locale.ROOT,
                "%d eyes. The centroid is %s at %s; the dashed ellipse is where 95 %% of eyes are to be expected. Angles in this plane are"
                        + " twice those of the eye. A larger disc stands for more eyes.",
                summary.eyes(),
                summary.centroid().magnitude().rounded(),
                summary.centroid().steepMeridian().rounded());
        return Drawing.chart(
                new Drawing.Words("double-angle", "Astigmatism after surgery, double angles", words),
                plot,
                Drawing.WIDTH,
                new Chart.Table(
                        List.of("x, D", "y, D", "Eyes"),
                        cells.stream()
                                .map(each -> List.of(
                                        signed(each.at().x().value()),
                                        signed(each.at().y().value()),
                                        Long.toString(each.eyes())))
                                .toList()));
    }

    private static XYSeriesCollection outline(VectorSummary summary) {
        XYSeries ellipse = new XYSeries("95 % of eyes", false);
        double tilt = Math.toRadians(summary.ofEyes().tilt().value());
        double major = summary.ofEyes().major().value();
        double minor = summary.ofEyes().minor().value();
        for (int degree = 0; degree <= 360; degree += 4) {
            double along = major * Math.cos(Math.toRadians(degree));
            double across = minor * Math.sin(Math.toRadians(degree));
            ellipse.add(
                    summary.centroid().x().value() + along * Math.cos(tilt) - across * Math.sin(tilt),
                    summary.centroid().y().value() + along * Math.sin(tilt) + across * Math.cos(tilt));
        }
        XYSeries centroid = new XYSeries("centroid");
        centroid.add(summary.centroid().x().value(), summary.centroid().y().value());
        XYSeriesCollection both = new XYSeriesCollection(ellipse);
        both.addSeries(centroid);
        return both;
    }

    private static NumberAxis plane(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setRange(-WIDEST, WIDEST);
        return axis;
    }

    private static NumberAxis whole(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
        return axis;
    }

    static String signed(double value) {
        return String.format(Locale.ROOT, "%+.2f", value);
    }

    static String plain(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
