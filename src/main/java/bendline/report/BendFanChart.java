package bendline.report;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup.Side;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.awt.BasicStroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.Range;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * The blank's curves from the start of the forward push until the rod is straight again, laid over one another as the camera
 * saw them, with the path of the tip. Loading curves are thin lines, unloading ones dashed, the deepest one is thick.
 */
final class BendFanChart {

    /** More curves than this can't be told apart. */
    private static final int MOST_CURVES = 18;

    /** Share of the width left free on either side for the labels at the tips. */
    private static final double SIDE_ROOM = 0.08;

    private final Stroke stroke;
    private final Trace trace;
    private final double unitsPerPx;
    private final String unit;

    BendFanChart(Stroke stroke, Trace trace) {
        this.stroke = stroke;
        this.trace = trace;
        double scale = metresPerPx(stroke.kinematics());
        this.unitsPerPx = Double.isFinite(scale) ? scale : 1 / trace.freeLengthPx();
        this.unit = Double.isFinite(scale) ? "m" : "lengths hand to tip";
    }

    /** The scale the stroke was measured in: both speeds are of the same tip. */
    private static double metresPerPx(Kinematics k) {
        double metres = 0;
        double pixels = 0;
        for (int i = 0; i < k.size(); i++) {
            if (Double.isFinite(k.tipSpeed()[i]) && Double.isFinite(k.tipSpeedPx()[i])) {
                metres += k.tipSpeed()[i];
                pixels += k.tipSpeedPx()[i];
            }
        }
        return pixels > 0 ? metres / pixels : Double.NaN;
    }

    /**
     * A fan that can be drawn.
     *
     * @param svg the drawing
     * @param stepSeconds clip time from one curve to the next
     * @param curves how many there are
     */
    record Fan(String svg, double stepSeconds, int curves) {}

    /** The chart, or nothing where the stretch is not known or holds no curves. */
    Optional<Fan> draw(ChartSize size, String id, String title) {
        List<FrameTrace> stretch = stretch();
        if (stretch.size() < 2) {
            return Optional.empty();
        }
        int every = Math.max(1, (int) Math.ceil((double) stretch.size() / MOST_CURVES));
        FrameTrace deepest = deepest(stretch);
        List<FrameTrace> shown = stretch.stream()
                .filter(f -> (f.frame() - deepest.frame()) % every == 0)
                .toList();
        Point origin = stretch.get(0).blank().first();
        JFreeChart chart = chart(size, shown, stretch, deepest, origin);
        SvgSheet sheet = square(chart, size, id, title);
        double step =
                (stretch.get(stretch.size() - 1).seconds() - stretch.get(0).seconds()) / (stretch.size() - 1);
        return Optional.of(new Fan(sheet.draw(chart), step * every, shown.size()));
    }

    private List<FrameTrace> stretch() {
        Event start = stroke.event(EventKind.FORWARD_START);
        Event end = stroke.event(EventKind.ROD_STRAIGHT);
        Event fallback = stroke.event(EventKind.RELEASE);
        Integer from = start.frame();
        Integer to = end.frame() != null ? end.frame() : fallback.frame();
        if (from == null || to == null) {
            return List.of();
        }
        return trace.frames().stream()
                .filter(f -> f.frame() >= from && f.frame() <= to + 1 && f.blank() != null)
                .toList();
    }

    private FrameTrace deepest(List<FrameTrace> stretch) {
        Event peak = stroke.event(EventKind.PEAK_BEND);
        FrameTrace best = stretch.get(stretch.size() / 2);
        for (FrameTrace f : stretch) {
            boolean better = peak.seconds() == null
                    ? chord(f) < chord(best)
                    : Math.abs(f.seconds() - peak.seconds()) < Math.abs(best.seconds() - peak.seconds());
            best = better ? f : best;
        }
        return best;
    }

    private static double chord(FrameTrace f) {
        return f.blank().first().distance(f.blank().last());
    }

    private JFreeChart chart(
            ChartSize size, List<FrameTrace> shown, List<FrameTrace> all, FrameTrace deepest, Point origin) {
        XYSeriesCollection data = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        for (FrameTrace f : shown) {
            int s = data.getSeriesCount();
            data.addSeries(series("f" + f.frame(), f.blank(), origin));
            renderer.setSeriesPaint(s, f.frame() == deepest.frame() ? Palette.BLANK.light() : Palette.SOFT.light());
            renderer.setSeriesStroke(s, pen(f, deepest));
        }
        XYSeries path = new XYSeries("tip", false);
        addTipPath(path, all, origin);
        int s = data.getSeriesCount();
        data.addSeries(path);
        renderer.setSeriesPaint(s, Palette.TIP.light());
        renderer.setSeriesStroke(s, new BasicStroke(1.2f));
        renderer.setSeriesShapesVisible(s, true);
        renderer.setSeriesShape(s, new Ellipse2D.Double(-2.4, -2.4, 4.8, 4.8));
        XYPlot plot = new XYPlot(data, ChartParts.axis(size.font()), ChartParts.axis(size.font()), renderer);
        ChartParts.bare(plot);
        plot.setDomainGridlinesVisible(true);
        plot.setDomainGridlinePaint(Palette.RULE.light());
        plot.setDomainGridlineStroke(new BasicStroke(1f));
        plot.getDomainAxis().setLabel(unit + " from the hand at the start");
        boolean toRight = stroke.castsTo() == Side.RIGHT;
        label(plot, size, all.get(0), origin, EventKind.FORWARD_START, toRight);
        label(plot, size, deepest, origin, EventKind.PEAK_BEND, !toRight);
        label(plot, size, all.get(all.size() - 1), origin, EventKind.ROD_STRAIGHT, !toRight);
        JFreeChart chart = new JFreeChart(null, size.font(), plot, false);
        chart.setBackgroundPaint(null);
        chart.addSubtitle(key(size));
        chart.setPadding(new RectangleInsets(4, 0, 0, 6));
        return chart;
    }

    private static TextTitle key(ChartSize size) {
        String between = size == ChartSize.WIDE ? " · " : "\n";
        TextTitle key = new TextTitle(
                EventWords.label(EventKind.FORWARD_START) + between + EventWords.label(EventKind.PEAK_BEND) + " (thick)"
                        + between + EventWords.label(EventKind.ROD_STRAIGHT),
                size.font());
        key.setPaint(Palette.INK.light());
        key.setPosition(RectangleEdge.BOTTOM);
        return key;
    }

    private static BasicStroke pen(FrameTrace f, FrameTrace deepest) {
        if (f.frame() == deepest.frame()) {
            return new BasicStroke(4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
        }
        return f.frame() < deepest.frame()
                ? new BasicStroke(1.3f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
                : new BasicStroke(1.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {6, 4}, 0);
    }

    private XYSeries series(String key, Polyline blank, Point origin) {
        XYSeries out = new XYSeries(key, false);
        blank.points().forEach(p -> out.add(x(p, origin), y(p, origin)));
        return out;
    }

    private double x(Point p, Point origin) {
        return (p.x() - origin.x()) * unitsPerPx;
    }

    private double y(Point p, Point origin) {
        return (origin.y() - p.y()) * unitsPerPx;
    }

    /** One bead a frame, no line over frames in which the blank was not found. */
    private void addTipPath(XYSeries path, List<FrameTrace> all, Point origin) {
        int last = all.get(0).frame();
        for (FrameTrace f : all) {
            if (f.frame() > last + 1) {
                path.add(Double.NaN, Double.NaN);
            }
            path.add(x(f.blank().last(), origin), y(f.blank().last(), origin));
            last = f.frame();
        }
    }

    private void label(XYPlot plot, ChartSize size, FrameTrace f, Point origin, EventKind kind, boolean left) {
        Point tip = f.blank().last();
        String text = Integer.toString(EventWords.number(kind));
        double aside = (left ? -0.03 : 0.03) * trace.freeLengthPx() * unitsPerPx;
        XYTextAnnotation a = new XYTextAnnotation(text, x(tip, origin) + aside, y(tip, origin) + Math.abs(aside));
        a.setFont(size.boldFont());
        a.setPaint(Palette.INK.light());
        a.setBackgroundPaint(Palette.PAPER.light());
        a.setTextAnchor(left ? TextAnchor.BOTTOM_RIGHT : TextAnchor.BOTTOM_LEFT);
        plot.addAnnotation(a);
    }

    /** Sizes the sheet so that a metre is as long across as up. */
    private static SvgSheet square(JFreeChart chart, ChartSize size, String id, String title) {
        XYPlot plot = chart.getXYPlot();
        Range x = Range.expand(plot.getDataRange(plot.getDomainAxis()), SIDE_ROOM, SIDE_ROOM);
        Range y = Range.expand(plot.getDataRange(plot.getRangeAxis()), 0.04, 0.12);
        plot.getDomainAxis().setRange(x);
        plot.getRangeAxis().setRange(y);
        SvgSheet first = new SvgSheet(id, size.width(), size.width(), title);
        Rectangle2D area = first.plotArea(chart);
        double wanted = area.getWidth() * y.getLength() / x.getLength();
        int height = (int) Math.round(size.width() - area.getHeight() + wanted);
        int allowed = Math.min(height, (int) (1.2 * size.width()));
        if (allowed < height) {
            double plotHeight = area.getHeight() - size.width() + allowed;
            double more = area.getWidth() * y.getLength() / plotHeight - x.getLength();
            plot.getDomainAxis().setRange(x.getLowerBound() - more / 2, x.getUpperBound() + more / 2);
        }
        NumberAxis domain = (NumberAxis) plot.getDomainAxis();
        ((NumberAxis) plot.getRangeAxis()).setTickUnit(domain.getTickUnit());
        return new SvgSheet(id, size.width(), allowed, title);
    }
}
