package bendline.report;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.function.Consumer;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.w3c.dom.Document;

/**
 * A chart as SVG text with real letters.
 *
 * @param id unique among the drawings of a page
 * @param width user units
 * @param height user units
 * @param title what a screen reader says
 */
record SvgSheet(String id, int width, int height, String title) {

    /** Digits after the point: a hundredth of a pixel can't be seen. */
    private static final int DECIMALS = 2;

    /** Draws a chart. */
    String draw(JFreeChart chart) {
        return draw(g -> chart.draw(g, new Rectangle2D.Double(0, 0, width, height)));
    }

    /** Where a chart puts its plot when drawn on this sheet. */
    Rectangle2D plotArea(JFreeChart chart) {
        ChartRenderingInfo info = new ChartRenderingInfo();
        chart.draw(graphics(), new Rectangle2D.Double(0, 0, width, height), info);
        return info.getPlotInfo().getDataArea();
    }

    /** Draws what is no chart of axes. */
    String draw(Consumer<? super Graphics2D> artist) {
        SVGGraphics2D g = graphics();
        artist.accept(g);
        return new FlatSvg(this).write(g.getRoot());
    }

    private SVGGraphics2D graphics() {
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document());
        context.setPrecision(DECIMALS);
        context.setIDGenerator(new SVGIDGenerator() {
            @Override
            public String generateID(String prefix) {
                return id + "-" + super.generateID(prefix);
            }
        });
        return new SVGGraphics2D(context, false);
    }

    private static Document document() {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument("http://www.w3.org/2000/svg", "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("this Java can't build XML", e);
        }
    }
}
