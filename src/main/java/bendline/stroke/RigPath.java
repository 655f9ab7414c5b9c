package bendline.stroke;

import bendline.geometry.Point;
import bendline.scene.Setup.Side;
import bendline.trace.FrameTrace;
import bendline.trace.Tracked;
import java.util.Arrays;

/**
 * Where the rig was in each frame about the forward stroke, in the plane of the cast as {@link BendArc} has it but for the origin:
 * metres, x towards the water, y up. NaN where it was not seen.
 *
 * @param realSeconds of every frame, seen or not
 * @param x towards the water
 * @param y up
 * @param sd 68 % uncertainty of a coordinate
 */
record RigPath(double[] realSeconds, double[] x, double[] y, double[] sd) {

    /** Frames before the forward stroke that steady its beginning, real seconds. */
    private static final double LEAD_SECONDS = 0.6;

    /** A radius that holds 68 % over the standard deviation of a coordinate (Rayleigh's distribution). */
    private static final double RADIUS = 1.515;

    private static final double LEAST_SD_PX = 0.4;

    /** A held rig is no farther from the tip than its drop, as far as that changes with the view; what is, is another thing. */
    private static final double REACH = 1.12;

    static RigPath of(StrokeReader.Readings all, CastPlane plane, int firstFrame) {
        double[] span = BendArcs.span(all);
        int n = all.rod().size();
        double[] t = all.rod().time();
        int from = 0;
        while (from < n && !(t[from] >= span[0] - LEAD_SECONDS)) {
            from++;
        }
        int to = from;
        while (to < n && t[to] <= span[1]) {
            to++;
        }
        RigPath out = new RigPath(
                Arrays.copyOfRange(t, from, to), new double[to - from], new double[to - from], new double[to - from]);
        double sign = all.rod().side() == Side.RIGHT ? 1 : -1;
        double until = all.release().known() ? all.release().value() : span[1];
        double reach = REACH * RigLine.drop(all.rod(), t[0], until);
        for (int i = from; i < to; i++) {
            boolean onItsLine = t[i] > until || !(RigLine.distance(all.rod(), i) > reach);
            FrameTrace f = all.trace().frames().get(firstFrame + i);
            out.put(i - from, onItsLine ? f.rig() : Tracked.notSeen(null, "beyond its line"), plane, sign);
        }
        return out;
    }

    private void put(int i, Tracked rig, CastPlane plane, double sign) {
        Point px = rig.seen() ? rig.position() : null;
        if (px == null) {
            x[i] = Double.NaN;
            y[i] = Double.NaN;
            sd[i] = Double.NaN;
            return;
        }
        Point at = plane.metres(px);
        double perPx = at.distance(plane.metres(px.plus(new Point(1, 0))));
        x[i] = sign * at.x();
        y[i] = at.y();
        sd[i] = perPx * Math.max(LEAST_SD_PX, rig.sdPx() / RADIUS);
    }
}
