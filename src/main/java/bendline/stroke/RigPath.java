package bendline.stroke;

import bendline.geometry.Point;
import bendline.scene.Setup.Side;
import bendline.trace.FrameTrace;
import bendline.trace.Tracked;
import java.util.Arrays;
import java.util.stream.IntStream;

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
        boolean[] onItsLine = onItsLine(all.rod(), reach);
        for (int i = from; i < to; i++) {
            FrameTrace f = all.trace().frames().get(firstFrame + i);
            out.put(
                    i - from,
                    t[i] > until || onItsLine[i] ? f.rig() : Tracked.notSeen(null, "not on its line"),
                    plane,
                    sign);
        }
        return out;
    }

    /**
     * Where the rig was seen and no farther from the tip than its line lets it. Where the tip was not seen, that can't be said of a place
     * by itself, and it counts only if the rig was seen in every frame from there to one of which it can be said.
     */
    static boolean[] onItsLine(RodSeries rod, double reach) {
        boolean[] out = new boolean[rod.size()];
        if (Double.isNaN(reach)) {
            Arrays.fill(out, true);
            return out;
        }
        int from = 0;
        for (int i = 0; i <= out.length; i++) {
            if (i == out.length || Double.isNaN(rod.rigX()[i]) || RigLine.distance(rod, i) > reach) {
                boolean said = IntStream.range(from, i).anyMatch(k -> RigLine.distance(rod, k) <= reach);
                Arrays.fill(out, from, i, said);
                from = i + 1;
            }
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
