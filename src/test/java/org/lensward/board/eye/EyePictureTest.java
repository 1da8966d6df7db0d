package org.lensward.board.eye;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Laterality;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Millimetres;
import org.lensward.risk.opening.Overlap;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** The pictures against the numbers they were drawn of: every length read back from the SVG, divided by its scale. */
class EyePictureTest {

    /** As fine as the SVG is written. */
    private static final double FINE = 0.001;

    private static Figures eye(double length, double radius, double depth) {
        return new Figures(
                Laterality.RIGHT,
                Millimetres.of(length),
                Millimetres.of(radius),
                Optional.of(Millimetres.of(depth)),
                Optional.of(Millimetres.of(4.5)),
                Optional.of(new Figures.Implant(
                        "SRK/T",
                        Millimetres.of(5.3),
                        List.of(Millimetres.of(4.9), Millimetres.of(5.1)),
                        Optional.of(Millimetres.of(6)),
                        Optional.of(new Overlap(Millimetres.of(6), Millimetres.of(5.25), Millimetres.of(0.1))),
                        Optional.of(Degrees.of(30)),
                        Optional.of(Degrees.of(100)))),
                Optional.of(Millimetres.of(7.2)));
    }

    private static Document read(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static Stream<Element> all(Document svg, String kind) {
        NodeList nodes = svg.getElementsByTagName("*");
        return IntStream.range(0, nodes.getLength())
                .mapToObj(index -> (Element) nodes.item(index))
                .filter(each -> List.of(each.getAttribute("class").split(" ")).contains(kind));
    }

    private static Element one(Document svg, String kind) {
        return all(svg, kind).findFirst().orElseThrow(() -> new AssertionError("nothing drawn as " + kind));
    }

    private static double scale(Document svg) {
        return Double.parseDouble(svg.getDocumentElement().getAttribute("data-scale"));
    }

    private static double number(Element element, String name) {
        return Double.parseDouble(element.getAttribute(name));
    }

    private static double across(Document svg, String kind) {
        Element line = one(svg, kind);
        return (number(line, "x2") - number(line, "x1")) / scale(svg);
    }

    private static List<Double> numbers(String path) {
        Matcher matcher = Pattern.compile("-?\\d+(\\.\\d+)?").matcher(path);
        return matcher.results().map(each -> Double.parseDouble(each.group())).toList();
    }

    @ParameterizedTest
    @CsvSource({"23.45, 7.8, 3.1", "20.5, 7.2, 2.4", "31.2, 8.3, 3.6"})
    void every_length_is_as_long_as_its_number(double length, double radius, double depth) throws Exception {
        Document svg = read(SideView.of(eye(length, radius, depth)));
        assertThat(across(svg, "axial-length")).isCloseTo(length, within(FINE));
        assertThat(across(svg, "chamber-depth")).isCloseTo(depth, within(FINE));
        assertThat(across(svg, "lens-position")).isCloseTo(5.3, within(FINE));
        assertThat(across(svg, "lens-thickness")).isCloseTo(4.5, within(FINE));
        assertThat(across(svg, "scale-bar")).isCloseTo(5, within(FINE));
    }

    @ParameterizedTest
    @CsvSource({"23.45, 7.8", "20.5, 6.6", "31.2, 8.9"})
    void the_cornea_is_an_arc_of_its_radius_through_its_apex(double length, double radius) throws Exception {
        Document svg = read(SideView.of(eye(length, radius, 3)));
        List<Double> path = numbers(one(svg, "cornea").getAttribute("d"));
        double scale = scale(svg);
        assertThat(path.get(2) / scale).as("radius of the arc").isCloseTo(radius, within(FINE));
        double rimX = path.get(0);
        double rimY = path.get(1);
        double apexX = path.get(7);
        double apexY = path.get(8);
        double centre = apexX + radius * scale;
        assertThat(Math.hypot(rimX - centre, rimY - apexY) / scale)
                .as("the rim lies on the same circle as the apex")
                .isCloseTo(radius, within(FINE));
        assertThat((number(one(svg, "retina-point"), "cx") - apexX) / scale)
                .as("from the apex to the retina")
                .isCloseTo(length, within(FINE));
    }

    @Test
    void the_planned_lens_stands_where_the_formula_puts_it_as_wide_as_its_optic() throws Exception {
        Document svg = read(SideView.of(eye(23.45, 7.8, 3.1)));
        double scale = scale(svg);
        double apex = number(one(svg, "axial-length"), "x1");
        Element plane = one(svg, "implant-plane");
        assertThat((number(plane, "x1") - apex) / scale).isCloseTo(5.3, within(FINE));
        assertThat((number(plane, "y2") - number(plane, "y1")) / scale).isCloseTo(6, within(FINE));
        assertThat(all(svg, "other-plane").map(each -> (number(each, "x1") - apex) / scale))
                .usingElementComparator((one, other) -> Math.abs(one - other) < FINE ? 0 : one.compareTo(other))
                .containsExactly(4.9, 5.1);
    }

    @Test
    void from_the_front_the_circles_are_to_scale_and_the_opening_is_off_centre() throws Exception {
        Document svg = read(FrontView.of(eye(23.45, 7.8, 3.1)));
        double scale = scale(svg);
        Element optic = one(svg, "optic");
        Element opening = one(svg, "opening");
        assertThat(2 * number(optic, "r") / scale).isCloseTo(6, within(FINE));
        assertThat(2 * number(opening, "r") / scale).isCloseTo(5.25, within(FINE));
        assertThat(2 * number(one(svg, "pupil"), "r") / scale).isCloseTo(7.2, within(FINE));
        double off = (number(opening, "cx") - number(optic, "cx")) / scale;
        assertThat(off).isCloseTo(0.1, within(FINE));
        assertThat(number(optic, "r") / scale - off - number(opening, "r") / scale)
                .as("the narrowest rim drawn is the least overlap: (6 - 5.25) / 2 - 0.1")
                .isCloseTo(0.275, within(2 * FINE));
    }

    /** Angles as TABO writes them: anticlockwise from the right of somebody who faces the patient, for either eye; value from memory. */
    @ParameterizedTest
    @CsvSource({"0, 1, 0", "90, 0, 1", "45, 0.7071, 0.7071", "135, -0.7071, 0.7071", "180, -1, 0"})
    void the_axis_turns_anticlockwise_from_the_right(double axis, double right, double up) throws Exception {
        Figures.Implant toric = new Figures.Implant(
                "SRK/T",
                Millimetres.of(5.3),
                List.of(),
                Optional.of(Millimetres.of(6)),
                Optional.empty(),
                Optional.of(Degrees.of(axis)),
                Optional.of(Degrees.of(axis)));
        for (Laterality side : Laterality.values()) {
            Document svg = read(FrontView.of(new Figures(
                    side,
                    Millimetres.of(23.45),
                    Millimetres.of(7.8),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(toric),
                    Optional.empty())));
            Element line = one(svg, "toric-axis");
            double half =
                    Math.hypot(number(line, "x2") - number(line, "x1"), number(line, "y2") - number(line, "y1")) / 2;
            assertThat((number(line, "x2") - 200) / half).isCloseTo(right, within(0.001));
            assertThat((200 - number(line, "y2")) / half).isCloseTo(up, within(0.001));
            Element incision = one(svg, "incision");
            assertThat((number(incision, "x1") + number(incision, "x2")) / 2 - 200)
                    .isCloseTo(right * 5.85 * scale(svg), within(0.1));
        }
    }

    @Test
    void the_nose_is_on_the_right_of_a_right_eye_and_the_side_is_said_in_words() throws Exception {
        Document svg = read(FrontView.of(eye(23.45, 7.8, 3.1)));
        Element nose = all(svg, "eye-word")
                .filter(each -> each.getTextContent().equals("nose"))
                .findFirst()
                .orElseThrow();
        assertThat(number(nose, "x")).isGreaterThan(200);
        assertThat(one(svg, "eye-side").getTextContent()).isEqualTo("RIGHT EYE");
        assertThat(svg.getElementsByTagName("desc").item(0).getTextContent())
                .contains("planned opening 5.25 mm", "least overlap 0.28 mm", "axis of the lens marks 30");
    }

    @Test
    void what_was_not_measured_is_not_drawn_and_is_said() throws Exception {
        Figures bare = new Figures(
                Laterality.LEFT,
                Millimetres.of(23),
                Millimetres.of(7.7),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        Document side = read(SideView.of(bare));
        assertThat(Stream.of("implant", "natural-lens", "iris", "lens-position", "chamber-depth")
                        .filter(kind -> all(side, kind).findAny().isPresent()))
                .isEmpty();
        assertThat(side.getElementsByTagName("desc").item(0).getTextContent())
                .contains("anterior chamber depth not measured", "lens thickness not measured");
    }
}
