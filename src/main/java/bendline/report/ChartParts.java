package bendline.report;

import java.awt.BasicStroke;
import java.awt.Font;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Axes and plots in the report's own look. */
final class ChartParts {

    private ChartParts() {}

    static NumberAxis axis(Font font) {
        NumberAxis axis = new NumberAxis();
        axis.setTickLabelFont(font);
        axis.setTickLabelPaint(Palette.INK.light());
        axis.setLabelFont(font);
        axis.setLabelPaint(Palette.INK.light());
        axis.setAxisLinePaint(Palette.SOFT.light());
        axis.setTickMarkPaint(Palette.SOFT.light());
        axis.setAutoRangeIncludesZero(false);
        axis.setNumberFormatOverride(new java.text.DecimalFormat(
                "0.###", java.text.DecimalFormatSymbols.getInstance(java.util.Locale.ROOT)));
        return axis;
    }

    static void bare(XYPlot plot) {
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinePaint(Palette.RULE.light());
        plot.setRangeGridlineStroke(new BasicStroke(1f));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    }
}
