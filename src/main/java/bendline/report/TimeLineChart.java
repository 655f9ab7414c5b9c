package bendline.report;

import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.Stroke;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.font.FontRenderContext;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.AxisLocation;
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

/** Butt angle, compression and tip speed over clip time, one above the other, with the moments of the cast marked. */
final class TimeLineChart {

    private static final int LANE_HEIGHT = 19;
    private static final int PANEL_HEIGHT = 132;
    private static final int AXIS_HEIGHT = 44;

    private final Stroke stroke;
    private final ChartSize size;
    private final double from;
    private final double to;
    private final List<Event> marked;

    /**
     * @param from clip time of the left edge
     * @param to clip time of the right edge
     * @param kinds the moments to mark where they are known
     */
    TimeLineChart(Stroke stroke, ChartSize size, double from, double to, Set<EventKind> kinds) {
        this.stroke = stroke;
        this.size = size;
        this.from = from;
        this.to = to;
        this.marked = kinds.stream()
                .map(stroke::event)
                .filter(e -> e.seconds() != null && e.seconds() >= from && e.seconds() <= to)
                .sorted(Comparator.comparing(Event::seconds))
                .toList();
    }

    /** The moments that are marked, in order of time. */
    List<EventKind> marked() {
        return marked.stream().map(Event::kind).toList();
    }

    /**
     * A line over time.
     *
     * @param name with its unit, for people
     * @param colour of the thing it is about
     * @param seconds clip time
     * @param values NaN where nothing is known
     * @param sds 68 % uncertainty; NaN or 0 for none
     */
    record Panel(String name, Palette colour, double[] seconds, double[] values, double[] sds) {}

    /** Angle, compression and tip speed as SVG. */
    String svg(String id, String title, double freeLengthPx) {
        return svg(id, title, panels(freeLengthPx));
    }

    /** Angle, compression and tip speed. */
    List<Panel> panels(double freeLengthPx) {
        return List.of(angle(), compression(), tipSpeed(freeLengthPx));
    }

    /** Lines over time, one above the other, as SVG. */
    String svg(String id, String title, List<Panel> panels) {
        List<LabelLanes.Place> places = labelPlaces();
        int lanes = 1 + places.stream().mapToInt(LabelLanes.Place::lane).max().orElse(0);
        CombinedDomainXYPlot stack = new CombinedDomainXYPlot(timeAxis());
        stack.setGap(8);
        stack.setBackgroundPaint(null);
        AxisSpace space = new AxisSpace();
        space.setLeft(size.leftMargin());
        stack.setFixedRangeAxisSpace(space);
        stack.add(lanePlot(places, lanes), lanes * LANE_HEIGHT);
        panels.forEach(p -> stack.add(panel(p), PANEL_HEIGHT));
        JFreeChart chart = new JFreeChart(null, size.font(), stack, false);
        chart.setBackgroundPaint(null);
        chart.setPadding(new RectangleInsets(2, 0, 0, 6));
        int height = lanes * LANE_HEIGHT + panels.size() * PANEL_HEIGHT + AXIS_HEIGHT + 24;
        return new SvgSheet(id, size.width(), height, title).draw(chart);
    }

    private double plotWidth() {
        return size.width() - size.leftMargin() - 6;
    }

    private List<LabelLanes.Place> labelPlaces() {
        double perSecond = plotWidth() / (to - from);
        return LabelLanes.arrange(
                marked.stream()
                        .mapToDouble(e -> (e.seconds() - from) * perSecond)
                        .toArray(),
                marked.stream().mapToDouble(e -> textWidth(label(e))).toArray(),
                plotWidth());
    }

    private String label(Event e) {
        return size == ChartSize.WIDE ? EventWords.label(e.kind()) : "" + EventWords.number(e.kind());
    }

    private double textWidth(String text) {
        return size.boldFont()
                        .getStringBounds(text, new FontRenderContext(null, true, true))
                        .getWidth()
                + 6;
    }

    private NumberAxis timeAxis() {
        NumberAxis axis = ChartParts.axis(size.font());
        axis.setLabel("clip time, s");
        axis.setRange(from, to);
        return axis;
    }

    private XYPlot lanePlot(List<LabelLanes.Place> places, int lanes) {
        NumberAxis range = new NumberAxis();
        range.setRange(0, lanes);
        range.setVisible(false);
        XYPlot plot = new XYPlot(null, null, range, null);
        ChartParts.bare(plot);
        plot.setRangeGridlinesVisible(false);
        addMarkers(plot);
        double secondsPerUnit = (to - from) / plotWidth();
        for (int i = 0; i < places.size(); i++) {
            LabelLanes.Place place = places.get(i);
            double middle = place.left() + textWidth(label(marked.get(i))) / 2;
            XYTextAnnotation text =
                    new XYTextAnnotation(label(marked.get(i)), from + middle * secondsPerUnit, place.lane() + 0.5);
            text.setFont(size.boldFont());
            text.setPaint(Palette.INK.light());
            text.setBackgroundPaint(Palette.PAPER.light());
            text.setTextAnchor(TextAnchor.CENTER);
            plot.addAnnotation(text);
        }
        return plot;
    }

    private Panel angle() {
        Kinematics k = stroke.kinematics();
        return new Panel(
                "Butt angle, °",
                Palette.BLANK,
                k.clipSeconds(),
                each(k.buttAngleRad(), Math::toDegrees),
                each(k.buttAngleSd(), Math::toDegrees));
    }

    private Panel compression() {
        Kinematics k = stroke.kinematics();
        return new Panel(
                "Compression, %",
                Palette.BLANK,
                k.clipSeconds(),
                each(k.chordRatio(), c -> 100 * (1 - c)),
                each(k.chordRatioSd(), c -> 100 * c));
    }

    private Panel tipSpeed(double freeLengthPx) {
        Kinematics k = stroke.kinematics();
        boolean metres = java.util.Arrays.stream(k.tipSpeed()).anyMatch(Double::isFinite);
        double[] none = new double[k.size()];
        return metres
                ? new Panel("Tip speed, m/s", Palette.TIP, k.clipSeconds(), k.tipSpeed(), none)
                : new Panel(
                        "Tip speed, hand-to-tip lengths/s",
                        Palette.TIP,
                        k.clipSeconds(),
                        each(k.tipSpeedPx(), v -> v / freeLengthPx),
                        none);
    }

    private static double[] each(double[] x, DoubleUnaryOperator f) {
        return java.util.Arrays.stream(x).map(f).toArray();
    }

    private XYPlot panel(Panel p) {
        YIntervalSeriesCollection data = runs(p);
        NumberAxis range = ChartParts.axis(size.font());
        double[] ends = ends(data);
        double room = Math.max(1e-6, ends[1] - ends[0]);
        range.setRange(ends[0] - 0.06 * room, ends[1] + 0.24 * room);
        XYPlot plot = new XYPlot(data, null, range, renderer(p.colour().light(), data.getSeriesCount()));
        ChartParts.bare(plot);
        plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
        addMarkers(plot);
        XYTextAnnotation title = new XYTextAnnotation(p.name(), from + 0.01 * (to - from), range.getUpperBound());
        title.setFont(size.boldFont());
        title.setPaint(Palette.INK.light());
        title.setBackgroundPaint(Palette.PAPER.light());
        title.setTextAnchor(TextAnchor.TOP_LEFT);
        plot.addAnnotation(title);
        return plot;
    }

    /** Stretches without a gap, each a series of its own, so that nothing is drawn where nothing was measured. */
    private YIntervalSeriesCollection runs(Panel p) {
        YIntervalSeriesCollection out = new YIntervalSeriesCollection();
        YIntervalSeries run = new YIntervalSeries(0);
        for (int i = 0; i < p.seconds().length; i++) {
            double t = p.seconds()[i];
            double y = p.values()[i];
            if (Double.isFinite(y) && t >= from && t <= to) {
                double s = Double.isFinite(p.sds()[i]) ? p.sds()[i] : 0;
                run.add(t, y, y - s, y + s);
            } else if (run.getItemCount() > 0) {
                out.addSeries(run);
                run = new YIntervalSeries(out.getSeriesCount());
            }
        }
        if (run.getItemCount() > 0) {
            out.addSeries(run);
        }
        return out;
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

    private static DeviationRenderer renderer(Color colour, int series) {
        DeviationRenderer renderer = new DeviationRenderer(true, false);
        renderer.setAlpha(0.25f);
        for (int s = 0; s < series; s++) {
            renderer.setSeriesPaint(s, colour);
            renderer.setSeriesFillPaint(s, colour);
            renderer.setSeriesStroke(s, new BasicStroke(2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        }
        return renderer;
    }

    private void addMarkers(XYPlot plot) {
        for (Event e : marked) {
            ValueMarker marker = new ValueMarker(e.seconds());
            marker.setPaint(Palette.SOFT.light());
            marker.setAlpha(1f);
            marker.setStroke(
                    new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL, 1f, new float[] {3, 3}, 0));
            plot.addDomainMarker(marker);
        }
    }
}
