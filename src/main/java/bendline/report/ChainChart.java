package bendline.report;

import bendline.stroke.BodyPart;
import bendline.stroke.Peak;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** When each link from the hips to the tip is fastest, on one line; over it the names, each with the bar of its uncertainty. */
final class ChainChart {

    private static final int LANE_HEIGHT = 30;
    private static final int LINE_HEIGHT = 36;
    private static final int AXIS_HEIGHT = 44;

    /** Room beside the first and last moment, clip time over the time between them. */
    private static final double MARGIN = 0.18;

    private final ChartSize size;
    private final List<Peak> peaks;
    private final double from;
    private final double to;

    /** @param all every link; those not known are left out */
    ChainChart(List<Peak> all, ChartSize size) {
        this.size = size;
        this.peaks = all.stream()
                .filter(p -> p.seconds() != null)
                .sorted(Comparator.comparing(Peak::seconds))
                .toList();
        double first = peaks.stream()
                .mapToDouble(p -> p.seconds() - p.plusMinusSeconds())
                .min()
                .orElse(0);
        double last = peaks.stream()
                .mapToDouble(p -> p.seconds() + p.plusMinusSeconds())
                .max()
                .orElse(1);
        double room = Math.max(0.02, MARGIN * (last - first));
        this.from = first - room;
        this.to = last + room;
    }

    /** Links that stand on it. */
    int count() {
        return peaks.size();
    }

    /** The chart as SVG. */
    String svg(String id, String title) {
        List<LabelLanes.Place> places = places();
        int lanes = 1 + places.stream().mapToInt(LabelLanes.Place::lane).max().orElse(0);
        double line = (double) LINE_HEIGHT / LANE_HEIGHT;
        NumberAxis range = new NumberAxis();
        range.setRange(-line, lanes);
        range.setVisible(false);
        NumberAxis time = ChartParts.axis(size.font());
        time.setLabel("clip time, s");
        time.setRange(from, to);
        XYPlot plot = new XYPlot(new XYSeriesCollection(), time, range, new XYLineAndShapeRenderer());
        ChartParts.bare(plot);
        plot.setRangeGridlinesVisible(false);
        AxisSpace space = new AxisSpace();
        space.setLeft(8);
        space.setRight(8);
        space.setBottom(AXIS_HEIGHT);
        plot.setFixedDomainAxisSpace(space);
        plot.addAnnotation(
                new XYLineAnnotation(from, -0.5 * line, to, -0.5 * line, new BasicStroke(1.5f), Palette.SOFT.light()));
        marks(plot, -0.5 * line);
        for (int i = 0; i < peaks.size(); i++) {
            label(plot, peaks.get(i), places.get(i), -0.5 * line);
        }
        JFreeChart chart = new JFreeChart(null, size.font(), plot, false);
        chart.setBackgroundPaint(null);
        chart.setPadding(new RectangleInsets(2, 0, 0, 0));
        int height = lanes * LANE_HEIGHT + LINE_HEIGHT + AXIS_HEIGHT + 6;
        return new SvgSheet(id, size.width(), height, title).draw(chart);
    }

    private List<LabelLanes.Place> places() {
        double perSecond = plotWidth() / (to - from);
        return LabelLanes.arrange(
                peaks.stream()
                        .mapToDouble(p -> (p.seconds() - from) * perSecond)
                        .toArray(),
                peaks.stream().mapToDouble(this::labelWidth).toArray(),
                plotWidth());
    }

    private double plotWidth() {
        return size.width() - 16;
    }

    /** Of the name or the bar, whichever is wider. */
    private double labelWidth(Peak p) {
        return Math.max(textWidth(p), 2 * p.plusMinusSeconds() * plotWidth() / (to - from) + 8);
    }

    private double textWidth(Peak p) {
        return size.boldFont()
                        .getStringBounds(p.part().label(), new FontRenderContext(null, true, true))
                        .getWidth()
                + 10;
    }

    /** A name, the bar of its uncertainty under it, and a thin line down to its mark. */
    private void label(XYPlot plot, Peak p, LabelLanes.Place place, double line) {
        double perUnit = (to - from) / plotWidth();
        double middle = from + (place.left() + labelWidth(p) / 2) * perUnit;
        double at = p.seconds();
        double bar = place.lane() + 0.16;
        plot.addAnnotation(new XYLineAnnotation(at, line, at, bar, new BasicStroke(1f), Palette.RULE.light()));
        plot.addAnnotation(new XYLineAnnotation(
                at - p.plusMinusSeconds(),
                bar,
                at + p.plusMinusSeconds(),
                bar,
                new BasicStroke(3f),
                colour(p).light()));
        XYTextAnnotation text = new XYTextAnnotation(p.part().label(), middle, place.lane() + 0.62);
        text.setFont(size.boldFont());
        text.setPaint(Palette.INK.light());
        text.setBackgroundPaint(Palette.PAPER.light());
        text.setTextAnchor(TextAnchor.CENTER);
        plot.addAnnotation(text);
    }

    /** One mark a link; body, hands, butt and tip have shapes of their own. */
    private void marks(XYPlot plot, double line) {
        XYSeriesCollection data = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        for (Peak p : peaks) {
            XYSeries one = new XYSeries(p.part().id());
            one.add(p.seconds().doubleValue(), line);
            renderer.setSeriesShape(data.getSeriesCount(), shape(p.part()));
            renderer.setSeriesPaint(data.getSeriesCount(), colour(p).light());
            renderer.setSeriesShapesFilled(data.getSeriesCount(), p.part() != BodyPart.TIP);
            renderer.setSeriesOutlineStroke(data.getSeriesCount(), new BasicStroke(2.5f));
            renderer.setSeriesStroke(data.getSeriesCount(), new BasicStroke(2.5f));
            data.addSeries(one);
        }
        plot.setDataset(data);
        plot.setRenderer(renderer);
    }

    private static Palette colour(Peak p) {
        return switch (p.part()) {
            case BUTT -> Palette.BLANK;
            case TIP -> Palette.TIP;
            default -> Palette.INK;
        };
    }

    private static Shape shape(BodyPart part) {
        return switch (part) {
            case HIPS, SHOULDERS -> new Rectangle2D.Double(-5, -5, 10, 10);
            case UPPER_HAND, LOWER_HAND -> triangle();
            case BUTT -> new Rectangle2D.Double(-2.5, -9, 5, 18);
            case TIP -> new Ellipse2D.Double(-6, -6, 12, 12);
        };
    }

    private static Shape triangle() {
        Path2D path = new Path2D.Double();
        path.moveTo(-6, -6);
        path.lineTo(7, 0);
        path.lineTo(-6, 6);
        path.closePath();
        return path;
    }
}
