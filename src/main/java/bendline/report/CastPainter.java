package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup.Side;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Draws what was followed over a frame: the blank as a line, the tip as a ring with its path as beads, the rig as a diamond,
 * the butt angle as an arc, the body as a stick figure. Nothing is drawn where nothing was measured.
 */
final class CastPainter {

    private final ClipAnalysis analysis;
    private final Trace trace;
    private final BodyPainter body;

    CastPainter(ClipAnalysis analysis) {
        this.analysis = analysis;
        this.trace = analysis.trace();
        this.body = new BodyPainter(analysis.body(), trace.motion());
    }

    /**
     * Draws in picture pixels; the graphics may be scaled and shifted.
     *
     * @param line width of the thinnest line in picture pixels
     */
    void paint(Graphics2D g, int frame, double line) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        FrameTrace f = trace.inPicture(frame);
        body.paint(g, frame, line);
        Stroke stroke = strokeAt(frame);
        if (stroke != null) {
            tipPath(g, frame, stroke, line);
            buttAngle(g, f, stroke, line);
        }
        if (f.blank() != null) {
            cased(g, path(f.blank()), PictureColours.BLANK, 1.6 * line);
        }
        if (f.rig().seen()) {
            cased(g, diamond(f.rig().position(), 7 * line), PictureColours.RIG, 1.4 * line);
        }
        if (f.tip().seen()) {
            cased(g, ring(f.tip().position(), 6 * line), PictureColours.TIP, 1.4 * line);
        }
    }

    /** The cast a frame belongs to, or null. */
    @Nullable
    Stroke strokeAt(int frame) {
        return analysis.casts().stream()
                .map(c -> c.stroke())
                .filter(s -> frame >= s.firstFrame() && frame <= s.lastFrame())
                .findFirst()
                .orElse(null);
    }

    /** The tip's path since the backswing or, once that has begun, since the forward push. */
    private void tipPath(Graphics2D g, int frame, Stroke stroke, double line) {
        Event forward = stroke.event(EventKind.FORWARD_START);
        int from = forward.frame() != null && frame >= forward.frame() ? forward.frame() : stroke.firstFrame();
        List<Point> run = new ArrayList<>();
        for (int i = from; i <= frame; i++) {
            Tracked tip = trace.frames().get(i).tip();
            if (tip.seen()) {
                run.add(trace.motion().toPicture(frame, tip.position()));
            } else {
                beads(g, run, line);
                run.clear();
            }
        }
        beads(g, run, line);
    }

    private static void beads(Graphics2D g, List<Point> run, double line) {
        if (run.size() >= 2) {
            cased(g, path(new Polyline(run)), PictureColours.TIP, 0.7 * line);
        }
        for (Point p : run) {
            g.setColor(PictureColours.CASING);
            g.fill(ring(p, 2.4 * line));
            g.setColor(PictureColours.TIP);
            g.fill(ring(p, 1.7 * line));
        }
    }

    /** From level in the direction of the cast to the blank at the grip. */
    private void buttAngle(Graphics2D g, FrameTrace f, Stroke stroke, double line) {
        double degrees = buttAngleDeg(stroke, f.frame());
        Point grip = f.grip().position();
        if (!Double.isFinite(degrees) || !f.grip().seen() || grip == null) {
            return;
        }
        double radius = 0.22 * trace.freeLengthPx();
        boolean right = stroke.castsTo() == Side.RIGHT;
        double ahead = right ? radius : -radius;
        Shape level = new Line2D.Double(grip.x(), grip.y(), grip.x() + 1.15 * ahead, grip.y());
        Shape arc = new Arc2D.Double(
                grip.x() - radius,
                grip.y() - radius,
                2 * radius,
                2 * radius,
                right ? 0 : 180,
                right ? degrees : -degrees,
                Arc2D.OPEN);
        cased(g, level, PictureColours.LETTERS, 0.8 * line);
        cased(g, arc, PictureColours.LETTERS, 0.8 * line);
    }

    /** Smoothed butt angle in degrees; NaN where it is not known. */
    static double buttAngleDeg(Stroke stroke, int frame) {
        int i = frame - stroke.kinematics().firstFrame();
        return i >= 0 && i < stroke.kinematics().size()
                ? Math.toDegrees(stroke.kinematics().buttAngleRad()[i])
                : Double.NaN;
    }

    private static void cased(Graphics2D g, Shape shape, Color colour, double width) {
        g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, 0.55f));
        g.setColor(PictureColours.CASING);
        g.setStroke(pen(2.2 * width));
        g.draw(shape);
        g.setComposite(AlphaComposite.SrcOver);
        g.setColor(colour);
        g.setStroke(pen(width));
        g.draw(shape);
    }

    private static BasicStroke pen(double width) {
        return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    }

    private static Shape path(Polyline line) {
        Path2D path = new Path2D.Double();
        Point first = line.first();
        path.moveTo(first.x(), first.y());
        line.points().forEach(p -> path.lineTo(p.x(), p.y()));
        return path;
    }

    private static Shape ring(Point p, double radius) {
        return new Ellipse2D.Double(p.x() - radius, p.y() - radius, 2 * radius, 2 * radius);
    }

    private static Shape diamond(Point p, double radius) {
        Path2D path = new Path2D.Double();
        path.moveTo(p.x(), p.y() - radius);
        path.lineTo(p.x() + radius, p.y());
        path.lineTo(p.x(), p.y() + radius);
        path.lineTo(p.x() - radius, p.y());
        path.closePath();
        return path;
    }
}
