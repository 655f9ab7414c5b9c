package bendline.report;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.stroke.BendArc;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
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
 * The blank's curves from the start of the forward push until the rod is straight again, laid over one another in the plane of
 * the cast, with the paths of tip and hand. Loading curves are thin lines, unloading ones dashed, the deepest one is thick; the
 * tip's path has round beads, the hand's square ones.
 */
final class BendFanChart {

    /** More curves than this can't be told apart. */
    private static final int MOST_CURVES = 18;

    /** Share of the width left free on either side for the labels at the tips. */
    private static final double SIDE_ROOM = 0.08;

    private final Stroke stroke;
    private final String unit;

    BendFanChart(Stroke stroke) {
        this.stroke = stroke;
        this.unit = stroke.bend().metric() ? "m" : "lengths hand to tip";
    }

    /**
     * A fan that can be drawn.
     *
     * @param svg the drawing
     * @param stepSeconds clip time from one curve to the next
     * @param curves how many there are
     * @param csv their figures
     */
    record Fan(String svg, double stepSeconds, int curves, String csv) {}

    /** The chart, or nothing where the stretch is not known or holds no curves. */
    Optional<Fan> draw(ChartSize size, String id, String title) {
        List<BendArc> stretch = stretch();
        if (stretch.size() < 2) {
            return Optional.empty();
        }
        int every = Math.max(1, (int) Math.ceil((double) stretch.size() / MOST_CURVES));
        BendArc deepest = deepest(stretch);
        List<BendArc> shown = stretch.stream()
                .filter(f -> (f.frame() - deepest.frame()) % every == 0)
                .toList();
        JFreeChart chart = chart(size, shown, stretch, deepest);
        SvgSheet sheet = square(chart, size, id, title);
        int frames = stretch.get(stretch.size() - 1).frame() - stretch.get(0).frame();
        double step =
                (stretch.get(stretch.size() - 1).clipSeconds() - stretch.get(0).clipSeconds()) / frames;
        return Optional.of(new Fan(sheet.draw(chart), step * every, shown.size(), ChartCsv.fan(shown, unit)));
    }

    private List<BendArc> stretch() {
        Event start = stroke.event(EventKind.FORWARD_START);
        Event end = stroke.event(EventKind.ROD_STRAIGHT);
        Event fallback = stroke.event(EventKind.RELEASE);
        Integer from = start.frame();
        Integer to = end.frame() != null ? end.frame() : fallback.frame();
        if (from == null || to == null) {
            return List.of();
        }
        return stroke.bend().arcs().stream()
                .filter(f -> f.frame() >= from && f.frame() <= to + 1)
                .toList();
    }

    private BendArc deepest(List<BendArc> stretch) {
        Event peak = stroke.event(EventKind.PEAK_BEND);
        BendArc best = stretch.get(stretch.size() / 2);
        for (BendArc f : stretch) {
            boolean better = peak.seconds() == null
                    ? chord(f) < chord(best)
                    : Math.abs(f.clipSeconds() - peak.seconds()) < Math.abs(best.clipSeconds() - peak.seconds());
            best = better ? f : best;
        }
        return best;
    }

    private static double chord(BendArc f) {
        return f.line().first().distance(f.line().last());
    }

    private JFreeChart chart(ChartSize size, List<BendArc> shown, List<BendArc> all, BendArc deepest) {
        XYSeriesCollection data = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        for (BendArc f : shown) {
            int s = data.getSeriesCount();
            data.addSeries(series("f" + f.frame(), f.line()));
            renderer.setSeriesPaint(s, f.frame() == deepest.frame() ? Palette.BLANK.light() : Palette.SOFT.light());
            renderer.setSeriesStroke(s, pen(f, deepest));
        }
        path(data, renderer, "tip", all, Polyline::last, new Ellipse2D.Double(-2.4, -2.4, 4.8, 4.8), Palette.TIP);
        path(data, renderer, "hand", all, Polyline::first, new Rectangle2D.Double(-2, -2, 4, 4), Palette.INK);
        XYPlot plot = new XYPlot(data, ChartParts.axis(size.font()), ChartParts.axis(size.font()), renderer);
        ChartParts.bare(plot);
        plot.setDomainGridlinesVisible(true);
        plot.setDomainGridlinePaint(Palette.RULE.light());
        plot.setDomainGridlineStroke(new BasicStroke(1f));
        // As wide as a phone only the shorter of these fits.
        boolean roomy = size == ChartSize.WIDE || stroke.bend().metric();
        plot.getDomainAxis().setLabel(roomy ? unit + " from the hand at the start" : unit);
        label(plot, size, all.get(0), EventKind.FORWARD_START, true);
        label(plot, size, deepest, EventKind.PEAK_BEND, false);
        label(plot, size, all.get(all.size() - 1), EventKind.ROD_STRAIGHT, false);
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

    private static BasicStroke pen(BendArc f, BendArc deepest) {
        if (f.frame() == deepest.frame()) {
            return new BasicStroke(4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
        }
        return f.frame() < deepest.frame()
                ? new BasicStroke(1.3f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
                : new BasicStroke(1.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {6, 4}, 0);
    }

    private static XYSeries series(String key, Polyline blank) {
        XYSeries out = new XYSeries(key, false);
        blank.points().forEach(p -> out.add(p.x(), p.y()));
        return out;
    }

    /** One bead a frame, no line over frames in which the blank was not found. */
    private static void path(
            XYSeriesCollection data,
            XYLineAndShapeRenderer renderer,
            String name,
            List<BendArc> all,
            Function<Polyline, Point> place,
            Shape bead,
            Palette colour) {
        XYSeries path = new XYSeries(name, false);
        int last = all.get(0).frame();
        for (BendArc f : all) {
            if (f.frame() > last + 1) {
                path.add(Double.NaN, Double.NaN);
            }
            Point p = place.apply(f.line());
            path.add(p.x(), p.y());
            last = f.frame();
        }
        int s = data.getSeriesCount();
        data.addSeries(path);
        renderer.setSeriesPaint(s, colour.light());
        renderer.setSeriesStroke(s, new BasicStroke(1.2f));
        renderer.setSeriesShapesVisible(s, true);
        renderer.setSeriesShape(s, bead);
    }

    private static void label(XYPlot plot, ChartSize size, BendArc f, EventKind kind, boolean left) {
        Point tip = f.line().last();
        String text = Integer.toString(EventWords.number(kind));
        double aside = (left ? -0.03 : 0.03) * f.line().length();
        XYTextAnnotation a = new XYTextAnnotation(text, tip.x() + aside, tip.y() + Math.abs(aside));
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
