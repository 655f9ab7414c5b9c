package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup.Side;
import bendline.trace.FrameTrace;
import java.util.ArrayList;
import java.util.List;

/** The bend arcs of one stroke, in the plane of the cast. */
final class BendArcs {

    /** What is shown and read before the forward stroke and after the rod is straight, real seconds. */
    private static final double LEAD_SECONDS = 0.15;

    private static final double TAIL_SECONDS = 0.12;

    /** Where one of the two ends is not known, real seconds about the fastest turn. */
    private static final double BEFORE_TURN_SECONDS = 0.5;

    private static final double AFTER_TURN_SECONDS = 0.35;

    /** Points of an arc: as many as a traced curve has shape for. */
    static final int POINTS = 25;

    /** What a curve fitted to a picture can be trusted to at best, pixels. */
    private static final double LEAST_SD_PX = 0.4;

    private BendArcs() {}

    /** @param lengthM upper hand to tip, as the plane was made for */
    static List<BendArc> of(StrokeReader.Readings all, CastPlane plane, double lengthM, int firstFrame) {
        double[] span = span(all);
        if (Double.isNaN(span[0])) {
            return List.of();
        }
        double sign = all.rod().side() == Side.RIGHT ? 1 : -1;
        List<BendArc> raw = new ArrayList<>();
        for (int i = 0; i < all.rod().size(); i++) {
            double t = all.rod().time()[i];
            FrameTrace f = all.trace().frames().get(firstFrame + i);
            if (t >= span[0] && t <= span[1] && f.blank() != null) {
                double off = f.tip().seen() ? plane.misplaced(f.blank(), lengthM) : 0;
                raw.add(arc(f, t, plane, sign, off));
            }
        }
        Point origin = origin(raw, all.moments().forwardStart());
        return raw.stream().map(a -> moved(a, origin)).toList();
    }

    /** From a little before the forward stroke until the rod is straight again, real time. */
    static double[] span(StrokeReader.Readings all) {
        Moments m = all.moments();
        double from = Double.isNaN(m.forwardStart()) ? m.fastestTurn() - BEFORE_TURN_SECONDS : m.forwardStart();
        double end = all.release().known() ? all.release().value() : m.fastestTurn() + AFTER_TURN_SECONDS;
        double straight = all.curves().chord().firstRise(0.995, m.peakBend(), m.peakBend() + 0.5);
        double to = Math.max(end, Double.isNaN(straight) ? end : straight);
        return new double[] {from - LEAD_SECONDS, to + TAIL_SECONDS};
    }

    private static BendArc arc(FrameTrace f, double t, CastPlane plane, double sign, double off) {
        Polyline line = f.blank().resampled(POINTS).map(p -> flipped(plane.metres(p), sign));
        double perPx = line.length() / f.blank().length();
        double sdPx = f.tip().seen() ? Math.max(LEAST_SD_PX, f.acrossSdPx()) : 2;
        Point rig = f.rig().seen() && f.rig().position() != null
                ? flipped(plane.metres(f.rig().position()), sign)
                : null;
        return new BendArc(
                f.frame(), f.seconds(), t, line, sdPx * perPx, f.tip().seen(), rig, off);
    }

    private static Point flipped(Point p, double sign) {
        return new Point(sign * p.x(), p.y());
    }

    private static Point origin(List<BendArc> arcs, double start) {
        BendArc best = null;
        for (BendArc a : arcs) {
            if (best == null || Math.abs(a.realSeconds() - start) < Math.abs(best.realSeconds() - start)) {
                best = a;
            }
        }
        return best == null ? new Point(0, 0) : best.line().first();
    }

    private static BendArc moved(BendArc a, Point origin) {
        Point rig = a.rig();
        return new BendArc(
                a.frame(),
                a.clipSeconds(),
                a.realSeconds(),
                a.line().map(p -> p.minus(origin)),
                a.sd(),
                a.whole(),
                rig == null ? null : rig.minus(origin),
                a.misplaced());
    }
}
