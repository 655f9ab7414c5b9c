package bendline.report;

import bendline.geometry.Polyline;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.Map;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.Range;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * The blank's curves of a cast of either set over each other, from the forward start until the rod is straight, in lengths hand
 * to tip from where the hand was at the start. A is grey and broken, B rust and whole; the deepest of each is thick.
 */
final class TwoFansChart {

    private static final int CURVES = 9;
    private static final double ROOM = 0.05;

    private final XYSeriesCollection data = new XYSeriesCollection();
    private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    private final ReadCast a;
    private final ReadCast b;

    TwoFansChart(ReadCast a, ReadCast b) {
        this.a = a;
        this.b = b;
    }

    /** The chart, or nothing where one of the casts has no curves in that stretch. */
    Optional<String> draw(ChartSize size, String id, String title) {
        renderer.setDrawSeriesLineAsPath(true);
        if (!add("A", a, Palette.SOFT.light(), true) | !add("B", b, Palette.BLANK.light(), false)) {
            return Optional.empty();
        }
        NumberAxis x = ChartParts.axis(size.font());
        NumberAxis y = ChartParts.axis(size.font());
        XYPlot plot = new XYPlot(data, x, y, renderer);
        ChartParts.bare(plot);
        plot.setDomainGridlinesVisible(true);
        plot.setDomainGridlinePaint(Palette.RULE.light());
        plot.setDomainGridlineStroke(new BasicStroke(1f));
        x.setLabel(size == ChartSize.WIDE ? "lengths hand to tip, towards the water" : "lengths hand to tip");
        JFreeChart chart = new JFreeChart(null, size.font(), plot, false);
        chart.setBackgroundPaint(null);
        chart.setPadding(new RectangleInsets(4, 0, 0, 6));
        return Optional.of(square(chart, size, id, title).draw(chart));
    }

    private boolean add(String set, ReadCast cast, Color colour, boolean broken) {
        Integer from = frame(cast, EventKind.FORWARD_START);
        Integer to = frame(cast, EventKind.ROD_STRAIGHT);
        to = to == null ? frame(cast, EventKind.RELEASE) : to;
        if (from == null || to == null) {
            return false;
        }
        Map<Integer, Polyline> all = cast.track().curves(from, to + 1);
        if (all.size() < 2) {
            return false;
        }
        int every = Math.max(1, (int) Math.ceil(all.size() / (double) CURVES));
        int deepest = all.entrySet().stream()
                .min(java.util.Comparator.comparingDouble(e -> chord(e.getValue())))
                .orElseThrow()
                .getKey();
        all.forEach((frame, line) -> {
            if ((frame - deepest) % every == 0) {
                series(set + frame, line, colour, frame == deepest ? 4f : 1.5f, broken);
            }
        });
        return true;
    }

    private static Integer frame(ReadCast cast, EventKind kind) {
        Event e = cast.events().get(kind);
        return e == null ? null : e.frame();
    }

    private static double chord(Polyline line) {
        return line.first().distance(line.last());
    }

    private void series(String key, Polyline line, Color colour, float width, boolean broken) {
        XYSeries s = new XYSeries(key, false);
        line.points().forEach(p -> s.add(p.x(), p.y()));
        int at = data.getSeriesCount();
        data.addSeries(s);
        renderer.setSeriesPaint(at, colour);
        float[] dash = {7, 4};
        renderer.setSeriesStroke(
                at,
                broken
                        ? new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, dash, 0)
                        : new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    }

    /** Sizes the sheet so that a length is as long across as up. */
    private static SvgSheet square(JFreeChart chart, ChartSize size, String id, String title) {
        XYPlot plot = chart.getXYPlot();
        Range x = Range.expand(plot.getDataRange(plot.getDomainAxis()), ROOM, ROOM);
        Range y = Range.expand(plot.getDataRange(plot.getRangeAxis()), ROOM, ROOM);
        plot.getDomainAxis().setRange(x);
        plot.getRangeAxis().setRange(y);
        Rectangle2D area = new SvgSheet(id, size.width(), size.width(), title).plotArea(chart);
        int height =
                (int) Math.round(size.width() - area.getHeight() + area.getWidth() * y.getLength() / x.getLength());
        ((NumberAxis) plot.getRangeAxis()).setTickUnit(((NumberAxis) plot.getDomainAxis()).getTickUnit());
        return new SvgSheet(id, size.width(), height, title);
    }
}
