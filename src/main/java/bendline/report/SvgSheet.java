package bendline.report;

import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.Consumer;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.SVGHints;
import org.jfree.svg.ViewBox;

/**
 * A chart as SVG text.
 *
 * @param id unique among the drawings of a page
 * @param width user units
 * @param height user units
 * @param title what a screen reader says
 */
record SvgSheet(String id, int width, int height, String title) {

    /** Draws a chart. */
    String draw(JFreeChart chart) {
        return draw(g -> chart.draw(g, new Rectangle2D.Double(0, 0, width, height)));
    }

    /** Where a chart puts its plot when drawn on this sheet. */
    Rectangle2D plotArea(JFreeChart chart) {
        ChartRenderingInfo info = new ChartRenderingInfo();
        chart.draw(new SVGGraphics2D(width, height), new Rectangle2D.Double(0, 0, width, height), info);
        return info.getPlotInfo().getDataArea();
    }

    /** Draws what is no chart of axes. */
    String draw(Consumer<SVGGraphics2D> artist) {
        SVGGraphics2D g = new SVGGraphics2D(width, height);
        g.setDefsKeyPrefix(id + "-");
        g.setGeomDoubleConverter(SvgSheet::number);
        g.setTransformDoubleConverter(SvgSheet::number);
        g.setRenderingHint(SVGHints.KEY_DRAW_STRING_TYPE, SVGHints.VALUE_DRAW_STRING_TYPE_STANDARD);
        artist.accept(g);
        String svg = g.getSVGElement(id, true, new ViewBox(0, 0, width, height), null, null);
        int head = svg.indexOf('>') + 1;
        return svg.substring(0, head - 1) + " role=\"img\" aria-labelledby=\"" + id + "-title\"><title id=\"" + id
                + "-title\">" + Html.escaped(title) + "</title>" + svg.substring(head);
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(2, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
