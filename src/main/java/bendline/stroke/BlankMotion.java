package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.rod.Blank;
import bendline.rod.Stiffness;
import bendline.signal.Trend;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How the blank moves from frame to frame, and what that bends it with: its own weight, its inertia and the air it is swept through.
 * All of it is load along the blank, which is known before the pull on the tip is looked for.
 */
final class BlankMotion {

    /** Places along the blank whose motion is followed. */
    private static final int STATIONS = 9;

    /** Of what inertia and air make out, so much is unknown: the mass, its place along the blank, the diameter. */
    static final double UNKNOWN = 0.3;

    private static final double AIR_KG_PER_M3 = 1.225;

    /** A long cylinder across the flow, below the critical Reynolds number (Hoerner; Matthews, fig. 5.13). */
    private static final double CYLINDER_DRAG = 1.2;

    /** Across a blank where it is held, metres: 14 mm of feeder rods. Common practice, no source. */
    private static final double BUTT_DIAMETER_M = 0.014;

    /** So many uncertainties beside its own smoothed path a tip is another thing. */
    private static final double FAR = 4;

    private final Blank blank;
    private final List<BendArc> arcs;
    private final Trend[] x = new Trend[STATIONS];
    private final Trend[] y = new Trend[STATIONS];

    /** @param step usual real time between frames */
    BlankMotion(Blank blank, List<BendArc> arcs, double step) {
        this.blank = blank;
        this.arcs = arcs;
        int n = arcs.size();
        double[] t = arcs.stream().mapToDouble(BendArc::realSeconds).toArray();
        double[] sd = arcs.stream().mapToDouble(BendArc::pointSd).toArray();
        for (int k = 0; k < STATIONS; k++) {
            double[] px = new double[n];
            double[] py = new double[n];
            Arrays.fill(px, Double.NaN);
            Arrays.fill(py, Double.NaN);
            for (int i = 0; i < n; i++) {
                if (arcs.get(i).whole()) {
                    Point p = station(i, k);
                    px[i] = p.x();
                    py[i] = p.y();
                }
            }
            x[k] = StrokeTrends.smoother(step).smooth(t, px, sd);
            y[k] = StrokeTrends.smoother(step).smooth(t, py, sd);
        }
    }

    private Point station(int i, int k) {
        Polyline line = arcs.get(i).line();
        return line.at(line.length() * k / (STATIONS - 1));
    }

    /** Whether a frame's tip lies where the frames around it can't have it: another thing was followed there. */
    boolean strays(int i) {
        int tip = STATIONS - 1;
        if (!arcs.get(i).whole()) {
            return false;
        }
        Point p = station(i, tip);
        double off = Math.hypot(p.x() - x[tip].values()[i], p.y() - y[tip].values()[i]);
        double scale = Math.max(x[tip].noiseScale(), y[tip].noiseScale());
        return off > FAR * Math.max(1, scale) * arcs.get(i).sd();
    }

    /** Load along the blank in a frame, N/m; its weight alone where its motion is not known. */
    List<Point> load(int i) {
        List<Point> out = new ArrayList<>();
        for (int k = 0; k < STATIONS; k++) {
            double m = blank.massAt(blank.lengthM() * k / (STATIONS - 1));
            double ax = x[k].accelerations()[i];
            double ay = y[k].accelerations()[i];
            boolean known = Double.isFinite(ax) && Double.isFinite(ay);
            Point force = new Point(known ? -m * ax : 0, -m * (Stiffness.GRAVITY + (known ? ay : 0)));
            out.add(known ? force.plus(drag(i, k)) : force);
        }
        return out;
    }

    /** Of the speed only what goes across the blank counts. */
    private Point drag(int i, int k) {
        double share = k / (STATIONS - 1.0);
        Point along = station(i, Math.min(STATIONS - 1, k + 1)).minus(station(i, Math.max(0, k - 1)));
        Point across = new Point(-along.y(), along.x()).times(1 / Math.max(1e-9, along.norm()));
        double speed = across.dot(new Point(x[k].rates()[i], y[k].rates()[i]));
        double size = 0.5
                * AIR_KG_PER_M3
                * CYLINDER_DRAG
                * BUTT_DIAMETER_M
                * blank.taper().diameterAt(share);
        return across.times(-size * Math.abs(speed) * speed);
    }

    /**
     * What the accelerations' own uncertainty comes to as a pull on the tip, newtons: each piece of the blank bends it the less, the
     * nearer it is to the hand (taken as the square of its share of the way).
     */
    double inertiaSd(int i) {
        double sum = 0;
        for (int k = 0; k < STATIONS; k++) {
            double share = k / (STATIONS - 1.0);
            double piece = blank.lengthM() / (STATIONS - 1) * (k == 0 || k == STATIONS - 1 ? 0.5 : 1);
            double a = Math.hypot(x[k].accelerationSds()[i], y[k].accelerationSds()[i]) / Math.sqrt(2);
            sum += blank.massAt(share * blank.lengthM()) * piece * share * share * a;
        }
        return sum;
    }
}
