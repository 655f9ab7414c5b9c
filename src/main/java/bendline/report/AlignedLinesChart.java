package bendline.report;

import bendline.stroke.EventKind;
import java.awt.BasicStroke;
import java.awt.Color;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/**
 * Butt angle, compression and tip speed of all casts of both sets over real time from the release: the middle one as a line,
 * the middle two thirds of the casts as a band. A is grey and broken, B rust and whole.
 */
final class AlignedLinesChart {

    private static final double FROM = -1.0;
    private static final double TO = 0.7;
    private static final double STEP = 0.01;
    private static final int PANEL_HEIGHT = 140;
    private static final int AXIS_HEIGHT = 66;

    /** A gap in a track longer than this is not bridged, s. */
    private static final double LONGEST_BRIDGE = 0.05;

    private final List<ReadCast> a;
    private final List<ReadCast> b;
    private final ChartSize size;

    AlignedLinesChart(List<ReadCast> a, List<ReadCast> b, ChartSize size) {
        this.a = a;
        this.b = b;
        this.size = size;
    }

    String svg(String id, String title) {
        NumberAxis time = ChartParts.axis(size.font());
        time.setLabel("seconds after the release");
        time.setRange(FROM, TO);
        CombinedDomainXYPlot stack = new CombinedDomainXYPlot(time);
        stack.setGap(8);
        stack.setBackgroundPaint(null);
        AxisSpace space = new AxisSpace();
        space.setLeft(size.leftMargin());
        stack.setFixedRangeAxisSpace(space);
        stack.add(panel("Butt angle, °", CastTrack::buttAngleDeg), PANEL_HEIGHT);
        stack.add(
                panel(
                        "Compression, %",
                        t -> Arrays.stream(t.chordRatio())
                                .map(r -> 100 * (1 - r))
                                .toArray()),
                PANEL_HEIGHT);
        int panels = 2;
        if (speeds(a) && speeds(b)) {
            stack.add(panel("Tip speed, m/s", CastTrack::tipSpeedMps), PANEL_HEIGHT);
            panels++;
        }
        JFreeChart chart = new JFreeChart(null, size.font(), stack, false);
        chart.setBackgroundPaint(null);
        chart.setPadding(new RectangleInsets(2, 0, 0, 6));
        return new SvgSheet(id, size.width(), panels * PANEL_HEIGHT + AXIS_HEIGHT, title).draw(chart);
    }

    private static boolean speeds(List<ReadCast> casts) {
        return casts.stream()
                .anyMatch(c -> Arrays.stream(c.track().tipSpeedMps()).anyMatch(Double::isFinite));
    }

    private XYPlot panel(String name, Function<CastTrack, double[]> series) {
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        DeviationRenderer renderer = new DeviationRenderer(true, false);
        renderer.setAlpha(0.22f);
        float[] dash = {7, 4};
        runs(data, renderer, a, series, Palette.SOFT.light(), new BasicStroke(2f, 0, 0, 1f, dash, 0));
        runs(data, renderer, b, series, Palette.BLANK.light(), new BasicStroke(2f));
        NumberAxis range = ChartParts.axis(size.font());
        double[] ends = ends(data);
        double room = Math.max(1e-6, ends[1] - ends[0]);
        range.setRange(ends[0] - 0.06 * room, ends[1] + 0.24 * room);
        XYPlot plot = new XYPlot(data, null, range, renderer);
        ChartParts.bare(plot);
        ValueMarker release = new ValueMarker(0);
        release.setPaint(Palette.SOFT.light());
        release.setAlpha(1f);
        release.setStroke(new BasicStroke(1f, 0, 0, 1f, new float[] {3, 3}, 0));
        plot.addDomainMarker(release);
        XYTextAnnotation title = new XYTextAnnotation(name, FROM + 0.01, range.getUpperBound());
        title.setFont(size.boldFont());
        title.setPaint(Palette.INK.light());
        title.setBackgroundPaint(Palette.PAPER.light());
        title.setTextAnchor(TextAnchor.TOP_LEFT);
        plot.addAnnotation(title);
        return plot;
    }

    /** One series for every stretch in which at least half of the casts are known. */
    private static void runs(
            YIntervalSeriesCollection into,
            DeviationRenderer renderer,
            List<ReadCast> casts,
            Function<CastTrack, double[]> series,
            Color colour,
            BasicStroke stroke) {
        YIntervalSeries run = new YIntervalSeries(into.getSeriesCount());
        for (double t = FROM; t <= TO + 1e-9; t += STEP) {
            double at = t;
            double[] known = casts.stream()
                    .mapToDouble(c -> value(c, series.apply(c.track()), at))
                    .filter(Double::isFinite)
                    .sorted()
                    .toArray();
            if (known.length >= Math.max(2, casts.size() / 2.0)) {
                run.add(t, quantile(known, 0.5), quantile(known, 1 / 6.0), quantile(known, 5 / 6.0));
            } else if (run.getItemCount() > 0) {
                add(into, renderer, run, colour, stroke);
                run = new YIntervalSeries(into.getSeriesCount());
            }
        }
        if (run.getItemCount() > 0) {
            add(into, renderer, run, colour, stroke);
        }
    }

    private static void add(
            YIntervalSeriesCollection into,
            DeviationRenderer renderer,
            YIntervalSeries run,
            Color colour,
            BasicStroke stroke) {
        int s = into.getSeriesCount();
        into.addSeries(run);
        renderer.setSeriesPaint(s, colour);
        renderer.setSeriesFillPaint(s, colour);
        renderer.setSeriesStroke(s, stroke);
    }

    private static double value(ReadCast c, double[] y, double afterRelease) {
        double t = c.seconds(EventKind.RELEASE) + afterRelease * c.picture().slowMotionFactor();
        double[] s = c.track().seconds();
        int i = c.track().at(t);
        if (!Double.isFinite(t) || i + 1 >= s.length || t < s[i] || s[i + 1] - s[i] > LONGEST_BRIDGE) {
            return Double.NaN;
        }
        return y[i] + (y[i + 1] - y[i]) * (t - s[i]) / (s[i + 1] - s[i]);
    }

    static double quantile(double[] sorted, double q) {
        double at = q * (sorted.length - 1);
        int i = (int) at;
        return i + 1 < sorted.length ? sorted[i] + (at - i) * (sorted[i + 1] - sorted[i]) : sorted[i];
    }

    private static double[] ends(YIntervalSeriesCollection data) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int s = 0; s < data.getSeriesCount(); s++) {
            for (int i = 0; i < data.getItemCount(s); i++) {
                low = Math.min(low, data.getStartYValue(s, i));
                high = Math.max(high, data.getEndYValue(s, i));
            }
        }
        return low <= high ? new double[] {low, high} : new double[] {0, 1};
    }
}
