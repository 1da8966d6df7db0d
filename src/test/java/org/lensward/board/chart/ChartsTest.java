package org.lensward.board.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.lensward.flow.OutcomePolicyFile;
import org.lensward.flow.PolicyFile;
import org.lensward.outcome.complication.FunnelLimits;
import org.lensward.outcome.complication.SeriesPoint;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;
import org.lensward.record.Fhir;
import org.lensward.record.outcome.OutcomeReading;
import org.lensward.record.outcome.OutcomeStudy;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

/** Charts of the invented year: well-formed, told in words and in a table, and drawn where the figures say. */
class ChartsTest {

    private static final Pattern STYLED = Pattern.compile("\\sstyle=|<style|<script|\\son[a-z]+=");
    private static OutcomeStudy study;

    @BeforeAll
    static void draw() throws Exception {
        try (OutcomeReading reading = OutcomeReading.ofFiles(
                Fhir.r4(),
                PolicyFile.shipped().biometry(),
                List.of(Path.of("demo-data/outcomes-of-a-year/export.ndjson")))) {
            study = OutcomeStudy.of(reading, OutcomePolicyFile.shipped(), reading.catalogue());
        }
    }

    private static List<Chart> charts() {
        var drawn = study.pictures();
        return List.of(
                RefractiveCharts.errors(drawn.formula(), drawn.errors()),
                RefractiveCharts.byLength(drawn.formula(), drawn.byLength()),
                RefractiveCharts.doubleAngle(
                        drawn.astigmatism(), study.astigmatism().orElseThrow()),
                ComplicationCharts.funnel(
                        LongStream.of(100, 200, 500, 1000)
                                .mapToObj(each -> FunnelLimits.at(each, Probability.of(0.0101)))
                                .toList(),
                        List.of(new ComplicationCharts.Dot("Practitioner/surgeon-1", 400, 12))),
                ComplicationCharts.cusum(study.course().points(), 3.9, -3.2));
    }

    private static Document parsed(Chart chart) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(chart.svg())));
    }

    @Test
    void a_chart_is_drawn_for_eyes_and_told_to_ears() throws Exception {
        for (Chart chart : charts()) {
            Element svg = parsed(chart).getDocumentElement();
            assertThat(svg.getAttribute("role")).isEqualTo("img");
            assertThat(svg.getElementsByTagName("title").item(0).getTextContent())
                    .isEqualTo(chart.title());
            assertThat(svg.getElementsByTagName("desc").item(0).getTextContent())
                    .isEqualTo(chart.words());
            assertThat(svg.getAttribute("aria-labelledby")).isEqualTo(chart.id() + "-title " + chart.id() + "-words");
            assertThat(chart.table().rows())
                    .isNotEmpty()
                    .allMatch(row -> row.size() == chart.table().head().size());
        }
    }

    /** The pages' content security policy allows no style and no script inside. */
    @Test
    void a_chart_has_no_style_and_no_script() {
        assertThat(charts()).noneMatch(chart -> STYLED.matcher(chart.svg()).find());
    }

    /** Five charts stand in one page, where an id may be given once. */
    @Test
    void no_two_charts_share_an_id() {
        Set<String> seen = new HashSet<>();
        for (Chart chart : charts()) {
            Pattern.compile("\\sid=\"([^\"]+)\"").matcher(chart.svg()).results().forEach(each -> assertThat(
                            seen.add(each.group(1)))
                    .as(each.group(1))
                    .isTrue());
        }
    }

    @Test
    void every_eye_that_counts_is_in_the_histogram() {
        long eyes = charts().get(0).table().rows().stream()
                .mapToLong(row -> Long.parseLong(row.get(1)))
                .sum();
        assertThat(eyes).isEqualTo(study.audit().counted());
    }

    @Test
    void every_signal_of_the_cumulative_sum_is_in_its_table() {
        List<SeriesPoint> points = Stream.of(SeriesPoint.Signal.NONE, SeriesPoint.Signal.WORSE, SeriesPoint.Signal.NONE)
                .map(signal -> new SeriesPoint(
                        1 + signal.ordinal(),
                        LocalDate.of(2026, 1, 1),
                        PureNumber.of(0),
                        PureNumber.of(1),
                        PureNumber.of(-1),
                        signal))
                .toList();
        assertThat(ComplicationCharts.cusum(points, 4, -4).table().rows())
                .singleElement()
                .satisfies(row -> assertThat(row).contains("worse"));
    }
}
