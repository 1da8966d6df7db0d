package org.lensward.board.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Stroke;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.data.xy.XYDataset;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Draws a plot as SVG that stands inside a page: black, grey and two colours that differ in print too, lines told apart by dashes. */
final class Drawing {

    static final int WIDTH = 640;
    static final int HEIGHT = 400;

    static final Color INK = new Color(0x14, 0x26, 0x2b);
    static final Color DEEP = new Color(0x17, 0x3b, 0x45);
    static final Color BAND = new Color(0xc9, 0xda, 0xde);
    static final Color WARN = new Color(0x8f, 0x1d, 0x2c);
    static final Color RULE = new Color(0xcf, 0xc8, 0xb8);

    static final Stroke LINE = new BasicStroke(2f);
    static final Stroke DASHED = dashes(8f, 5f);
    static final Stroke DOTTED = dashes(2f, 4f);

    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 13);

    private Drawing() {}

    private static Stroke dashes(float on, float off) {
        return new BasicStroke(2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10f, new float[] {on, off}, 0f);
    }

    /** A plot in our colours. */
    static XYPlot plot(XYDataset data, ValueAxis across, ValueAxis up, XYItemRenderer renderer) {
        XYPlot plot = new XYPlot(data, across, up, renderer);
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinePaint(RULE);
        plot.setRangeGridlinePaint(RULE);
        for (ValueAxis axis : new ValueAxis[] {across, up}) {
            axis.setLabelFont(TEXT);
            axis.setTickLabelFont(TEXT);
            axis.setLabelPaint(INK);
            axis.setTickLabelPaint(INK);
        }
        return plot;
    }

    /** The chart of the plot, {@link #WIDTH} wide. */
    static Chart chart(String id, String title, String words, XYPlot plot, Chart.Table table) {
        return chart(new Words(id, title, words), plot, HEIGHT, table);
    }

    /** The same, as high as that. */
    static Chart chart(Words said, XYPlot plot, int height, Chart.Table table) {
        JFreeChart drawn = new JFreeChart(null, TEXT, plot, false);
        drawn.setBackgroundPaint(null);
        return new Chart(said.id(), said.title(), said.words(), svg(said, drawn, height), table);
    }

    /** What a chart says of itself. */
    record Words(String id, String title, String words) {}

    private static String svg(Words said, JFreeChart drawn, int height) {
        Document document = document();
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setIDGenerator(new SVGIDGenerator() {
            @Override
            public String generateID(String prefix) {
                return said.id() + "-" + super.generateID(prefix);
            }
        });
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        graphics.setSVGCanvasSize(new Dimension(WIDTH, height));
        drawn.draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, height));
        Element root = graphics.getRoot();
        root.setAttribute("viewBox", "0 0 " + WIDTH + " " + height);
        root.setAttribute("role", "img");
        root.setAttribute("aria-labelledby", said.id() + "-title " + said.id() + "-words");
        nameless(root.getElementsByTagName("defs"));
        Node first = root.getFirstChild();
        root.insertBefore(text(document, "desc", said.id() + "-words", said.words()), first);
        root.insertBefore(text(document, "title", said.id() + "-title", said.title()), root.getFirstChild());
        return printed(graphics, root);
    }

    /** Batik gives its definitions one and the same id in every drawing, and nothing refers to it. */
    private static void nameless(NodeList definitions) {
        for (int each = 0; each < definitions.getLength(); each++) {
            ((Element) definitions.item(each)).removeAttribute("id");
        }
    }

    private static Document document() {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(SVG, "svg", null);
        } catch (ParserConfigurationException impossible) {
            throw new IllegalStateException("Every Java platform makes XML documents", impossible);
        }
    }

    private static Element text(Document document, String name, String id, String words) {
        Element element = document.createElementNS(SVG, name);
        element.setAttribute("id", id);
        element.setTextContent(words);
        return element;
    }

    /** Without the XML declaration and the document type, which a page must not have in its middle. */
    private static String printed(SVGGraphics2D graphics, Element root) {
        StringWriter out = new StringWriter();
        try {
            graphics.stream(root, out, false, false);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        String whole = out.toString();
        return whole.substring(whole.indexOf("<svg"));
    }
}
