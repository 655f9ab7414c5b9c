package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup.Side;
import bendline.stroke.BendArc;
import bendline.stroke.Stroke;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.Collections;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * The panel beside the marked clip: the blank's curve of the frame in thick, the curves before it thin, seen square to the
 * cast and always from the same place. Under it the compression as a bar that grows with it.
 */
final class BendPanel {

    private static final Color FAINT = new Color(0x8f, 0x9b, 0x9b);

    /** Earlier curves that stay to be seen. */
    private static final int TRAIL = 14;

    /** Curves by frame, by number of the cast, where they stand on the panel: the same in every frame, so laid out once. */
    private final Map<Integer, NavigableMap<Integer, Curve>> curves = new TreeMap<>();

    private final int width;
    private final int height;
    private final int fontSize;

    BendPanel(ClipAnalysis analysis, int width, int height, int fontSize) {
        this.width = width;
        this.height = height;
        this.fontSize = fontSize;
        analysis.casts().forEach(c -> add(c.stroke()));
    }

    /**
     * A curve on the panel.
     *
     * @param path its line
     * @param tip its end
     */
    private record Curve(Shape path, Point tip) {}

    private void add(Stroke stroke) {
        double[] box = box(stroke);
        NavigableMap<Integer, Curve> byFrame = new TreeMap<>();
        for (BendArc arc : stroke.bend().arcs()) {
            Polyline line = placed(arc.line(), box, stroke.castsTo());
            byFrame.put(arc.frame(), new Curve(path(line), line.last()));
        }
        curves.put(stroke.number(), byFrame);
    }

    /** Least x and y and most x and y of all curves and the hand. */
    private static double[] box(Stroke stroke) {
        double[] box = {0, 0, 0, 0};
        for (BendArc arc : stroke.bend().arcs()) {
            for (Point p : arc.line().points()) {
                box[0] = Math.min(box[0], p.x());
                box[1] = Math.min(box[1], p.y());
                box[2] = Math.max(box[2], p.x());
                box[3] = Math.max(box[3], p.y());
            }
        }
        return box;
    }

    /**
     * Draws the panel; the graphics' origin is its upper left corner.
     *
     * @param stroke the cast that the frame belongs to
     * @param compression 0 to 1, or NaN
     */
    void paint(Graphics2D g, Stroke stroke, int frame, double compression) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        NavigableMap<Integer, Curve> all = curves.getOrDefault(stroke.number(), Collections.emptyNavigableMap());
        all.headMap(frame, false).descendingMap().values().stream()
                .limit(TRAIL)
                .forEach(c -> line(g, c.path(), FAINT, 0.06 * fontSize));
        Curve now = all.get(frame);
        if (now != null) {
            line(g, now.path(), PictureColours.BLANK, 0.2 * fontSize);
            dot(g, now.tip());
        }
        bar(g, compression);
        words(g, now != null);
    }

    /** From the plane of the cast into the panel, the same for every frame. */
    private Polyline placed(Polyline line, double[] box, Side castsTo) {
        double room = 1.5 * fontSize;
        double usable = height - 5 * fontSize;
        double scale = Math.min(
                (width - 2 * room) / Math.max(1e-6, box[2] - box[0]), usable / Math.max(1e-6, box[3] - box[1]));
        double left = (width - scale * (box[2] - box[0])) / 2;
        // The plane's x runs towards the water; beside the picture it must run the way it does there.
        boolean right = castsTo == Side.RIGHT;
        return line.map(p -> {
            double x = left + scale * (p.x() - box[0]);
            return new Point(right ? x : width - x, 2.2 * fontSize + scale * (box[3] - p.y()));
        });
    }

    private static Path2D path(Polyline line) {
        Path2D path = new Path2D.Double();
        path.moveTo(line.first().x(), line.first().y());
        line.points().forEach(p -> path.lineTo(p.x(), p.y()));
        return path;
    }

    private static void line(Graphics2D g, Shape path, Color colour, double pen) {
        g.setColor(colour);
        g.setStroke(new BasicStroke((float) Math.max(1, pen), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(path);
    }

    private void dot(Graphics2D g, Point p) {
        double r = 0.3 * fontSize;
        Shape ring = new Ellipse2D.Double(p.x() - r, p.y() - r, 2 * r, 2 * r);
        g.setColor(PictureColours.TIP);
        g.setStroke(new BasicStroke((float) Math.max(1.5, 0.1 * fontSize)));
        g.draw(ring);
    }

    private void bar(Graphics2D g, double compression) {
        double y = height - 0.9 * fontSize;
        double full = width - 2.0 * fontSize;
        g.setColor(FAINT);
        g.setStroke(new BasicStroke(1));
        g.draw(new Line2D.Double(fontSize, y, fontSize + full, y));
        if (Double.isFinite(compression)) {
            // Half the straight length is more than a blank in use is ever compressed by.
            double share = Math.max(0, Math.min(1, 2 * compression));
            g.setColor(PictureColours.BLANK);
            g.setStroke(new BasicStroke((float) (0.4 * fontSize), BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
            g.draw(new Line2D.Double(fontSize, y, fontSize + full * share, y));
        }
    }

    private void words(Graphics2D g, boolean found) {
        if (!Lettering.works()) {
            return;
        }
        g.setColor(PictureColours.LETTERS);
        g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, fontSize));
        g.drawString("The bend", fontSize, (int) (1.5 * fontSize));
        g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, fontSize));
        g.drawString(found ? "Compression" : "Not seen here", fontSize, (int) (height - 1.5 * fontSize));
    }
}
