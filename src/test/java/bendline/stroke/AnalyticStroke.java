package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup.Side;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/**
 * A cast written down as formulas: smooth profiles of the butt angle, the hand and the bend, and a rig that hangs, trails and
 * flies. Real seconds, degrees, pixels with y up inside. Its moments follow from the formulas by fine sampling.
 *
 * @param backswing seconds
 * @param settle end of the backward move to start of the forward turn, seconds
 * @param turn seconds of the forward turn
 * @param handLead seconds by which the hand starts before the turn
 * @param rearmost butt angle behind
 * @param stopAngle butt angle at the end of the turn
 * @param bend turn of the tip's direction against the butt's at the deepest
 * @param loadAt when the bend starts, as a share of the turn's time; negative for a tight line
 * @param fall how far the rod is dropped after the release
 * @param fallDelay release to start of the fall, seconds
 * @param fallSeconds the whole fall
 * @param slack largest slack of the drop early in the turn, over the drop
 */
public record AnalyticStroke(
        double backswing,
        double settle,
        double turn,
        double handLead,
        double rearmost,
        double stopAngle,
        double bend,
        double loadAt,
        double fall,
        double fallDelay,
        double fallSeconds,
        double slack) {

    /** A stroke with nothing to find fault with. */
    public static final AnalyticStroke GOOD =
            new AnalyticStroke(1.6, 0.6, 0.32, 0.08, 140, 55, 85, -0.1, 0, 0.3, 0.5, 0);

    static final double READY = 58;
    static final double START = 0.6;
    static final double AFTER = 1.4;
    static final double FREE_PX = 430;
    static final double DROP_PX = 160;
    static final double FLIGHT_PX = 5200;
    static final double FLIGHT_DEG = 42;
    static final double RING_HZ = 5;

    private static final double PEAK_AT = 0.62;
    private static final double STRAIGHT_AT = 1.25;
    private static final double RELEASE_AT = 0.97;
    private static final Point GRIP = new Point(900, -700);

    AnalyticStroke withBackswing(double seconds, double settleSeconds, double angle) {
        return new AnalyticStroke(
                seconds,
                settleSeconds,
                turn,
                handLead,
                angle,
                stopAngle,
                bend,
                loadAt,
                fall,
                fallDelay,
                fallSeconds,
                slack);
    }

    AnalyticStroke withLoad(double deepest, double from, double slackness) {
        return new AnalyticStroke(
                backswing,
                settle,
                turn,
                handLead,
                rearmost,
                stopAngle,
                deepest,
                from,
                fall,
                fallDelay,
                fallSeconds,
                slackness);
    }

    AnalyticStroke withFinish(double stop, double deg, double delay, double seconds) {
        return new AnalyticStroke(
                backswing, settle, turn, handLead, rearmost, stop, bend, loadAt, deg, delay, seconds, slack);
    }

    double turnStart() {
        return START + backswing + settle;
    }

    double release() {
        return turnStart() + RELEASE_AT * turn;
    }

    double end() {
        return release() + AFTER;
    }

    double angle(double t) {
        return READY
                + (rearmost - READY) * step((t - START) / backswing)
                - (rearmost - stopAngle) * step((t - turnStart()) / turn)
                - fall * step((t - release() - fallDelay) / fallSeconds);
    }

    /** Turn of the tip's direction against the butt's, degrees, positive where it trails. */
    double tipTurn(double t) {
        double u = (t - turnStart()) / turn;
        if (u <= PEAK_AT) {
            return bend * step((u - loadAt) / (PEAK_AT - loadAt));
        }
        if (u <= STRAIGHT_AT) {
            return bend * (1 - step((u - PEAK_AT) / (STRAIGHT_AT - PEAK_AT)));
        }
        double since = (u - STRAIGHT_AT) * turn;
        return -12 * step(since / 0.05) * Math.exp(-2 * since) * Math.sin(2 * Math.PI * RING_HZ * since);
    }

    Point grip(double t) {
        double hands = turn + handLead;
        return GRIP.plus(new Point(-40 * step((t - START) / backswing), 0))
                .plus(new Point(90 * step((t - turnStart() + handLead) / hands), 20 * step((t - turnStart()) / turn)));
    }

    /** The blank: its direction turns like the square of the way along it, as a rod that tapers does. */
    Polyline blank(double t) {
        int pieces = 60;
        List<Point> points = new ArrayList<>();
        Point p = grip(t);
        points.add(p);
        for (int i = 0; i < pieces; i++) {
            double u = (i + 0.5) / pieces;
            double direction = Math.toRadians(angle(t) + tipTurn(t) * u * u);
            p = p.plus(Point.direction(direction).times(FREE_PX / pieces));
            points.add(p);
        }
        return new Polyline(points);
    }

    double chord(double t) {
        Polyline b = blank(t);
        return b.first().distance(b.last()) / FREE_PX;
    }

    Point rig(double t) {
        double at = Math.min(t, release());
        double u = (at - turnStart()) / (release() - turnStart());
        double direction = Math.toRadians(-90 - 138 * step(u));
        double loose = 1 - slack * step(u / 0.1) * (1 - step((u - 0.35) / 0.2));
        Point hanging = blank(at).last().plus(Point.direction(direction).times(DROP_PX * loose));
        double flown = t - at;
        return hanging.plus(Point.direction(Math.toRadians(FLIGHT_DEG)).times(FLIGHT_PX * flown));
    }

    /** The moments by the words of the design, sampled every tenth of a millisecond. */
    Map<EventKind, Double> moments() {
        Map<EventKind, Double> m = new EnumMap<>(EventKind.class);
        double h = 1e-4;
        DoubleUnaryOperator back = t -> (angle(t + h) - angle(t - h)) / (2 * h);
        DoubleUnaryOperator forward = t -> -back.applyAsDouble(t);
        DoubleUnaryOperator hand = t -> (grip(t + h).x() - grip(t - h).x()) / (2 * h);
        double mid = turnStart() + 0.5 * turn;
        double backPeak = START + 0.5 * backswing;
        m.put(EventKind.BACKSWING_START, rise(back, 0.1 * back.applyAsDouble(backPeak), START - 0.1, h));
        m.put(EventKind.BACKSWING_END, rise(forward, -0.1 * back.applyAsDouble(backPeak), backPeak, h));
        double peak = forward.applyAsDouble(mid);
        double handPeak = turnStart() - handLead + 0.5 * (turn + handLead);
        double handStart = rise(hand, 0.1 * hand.applyAsDouble(handPeak), turnStart() - handLead - 0.02, h);
        m.put(EventKind.FORWARD_START, Math.min(handStart, rise(forward, 0.1 * peak, turnStart() - 0.02, h)));
        m.put(EventKind.FASTEST_TURN, mid);
        m.put(EventKind.PEAK_BEND, turnStart() + PEAK_AT * turn);
        m.put(EventKind.STOP, rise(back, -0.2 * peak, mid, h));
        m.put(EventKind.RELEASE, release());
        m.put(EventKind.ROD_STRAIGHT, rise(this::chord, 0.995, turnStart() + PEAK_AT * turn, h));
        return m;
    }

    /** Frames of this stroke filmed at a capture rate and played at {@code factor} times slower. */
    Trace trace(double captureFps, double factor, Side side, double sd, double dropped, long seed) {
        NoisyTrace out = new NoisyTrace(1920, 1080, sd, dropped, seed);
        for (int i = 0; i / captureFps <= end(); i++) {
            double t = i / captureFps;
            Point rig = picture(rig(t), side);
            boolean inPicture = rig.x() > 0 && rig.x() < 1920 && rig.y() > 0 && rig.y() < 1080;
            out.add(t * factor, blank(t).map(p -> picture(p, side)), true, inPicture ? rig : null, chord(t));
        }
        return out.trace();
    }

    private static Point picture(Point p, Side side) {
        return new Point(side == Side.RIGHT ? p.x() : 1920 - p.x(), -p.y());
    }

    /** From 0 to 1 with zero slope and curvature at both ends. */
    static double step(double u) {
        double c = Math.max(0, Math.min(1, u));
        return c * c * c * (10 - 15 * c + 6 * c * c);
    }

    private static double rise(DoubleUnaryOperator f, double level, double from, double h) {
        double t = from;
        while (f.applyAsDouble(t) < level) {
            t += h;
            if (t > from + 10) {
                throw new IllegalStateException("never rises to " + level);
            }
        }
        return t;
    }
}
