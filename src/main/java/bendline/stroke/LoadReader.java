package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.rod.BendReader;
import bendline.rod.BendReading;
import bendline.rod.Blank;
import bendline.rod.Stiffness;
import bendline.rod.TracedArc;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads from the bend arcs what pulls on the tip: in each frame the end force whose elastica, together with the blank's own
 * weight and inertia, lies nearest to the arc. The inertia is the blank's mass, as blanks of its power have it, times the
 * acceleration of the arcs from frame to frame. Up to the release the line's direction, from tip to rig, helps where it was seen.
 */
final class LoadReader {

    /** Places along the blank whose acceleration is taken. */
    private static final int STATIONS = 9;

    /** How far a taut line may point beside the way from tip to rig, radians: its own sag and the reading. */
    private static final double LINE_SD = 0.06;

    /** A rig nearer to the tip than this share of the rod says nothing of a direction. */
    private static final double LEAST_LINE = 0.1;

    /** Of what the inertia makes out, so much is unknown: the mass and its place along the blank. */
    private static final double INERTIA_SD = 0.3;

    /** A shape that lies further off than this many uncertainties is none of this blank. */
    private static final double WORST_MISFIT = 6;

    /** What an energy read from one frame can be trusted to at best, joules. */
    private static final double LEAST_J = 0.02;

    private final Blank blank;
    private final List<BendArc> arcs;
    private final double lengthSd;
    private final double until;
    private final double step;
    private final String basis;

    /**
     * @param lengthSd uncertainty of lengths in metres over their value
     * @param until the release, or the deepest bend where that was not seen: from then on no force is read, real time
     * @param step usual real time between frames
     */
    LoadReader(RodStiffness rod, Blank blank, List<BendArc> arcs, double lengthSd, double until, double step) {
        this.blank = blank;
        this.arcs = arcs;
        this.lengthSd = lengthSd;
        this.until = until;
        this.step = step;
        this.basis = rod.basis();
    }

    LoadCurve read() {
        int n = arcs.size();
        double[] t = arcs.stream().mapToDouble(BendArc::realSeconds).toArray();
        Point[][] pulled = accelerations(t);
        double[][] raw = new double[8][n];
        for (double[] row : raw) {
            Arrays.fill(row, Double.NaN);
        }
        BendReader reader = new BendReader(blank);
        BendReading before = null;
        for (int i = 0; i < n; i++) {
            before = arcs.get(i).realSeconds() <= until
                    ? loaded(reader, raw, i, body(pulled[i]), before)
                    : free(reader, raw, i, before);
        }
        return told(t, raw);
    }

    private @Nullable BendReading loaded(
            BendReader reader, double[][] raw, int i, List<Point> body, @Nullable BendReading before) {
        BendReading with = reader.read(arc(i), hints(i, body, before));
        if (!fits(with)) {
            return before;
        }
        put(raw, i, with, reader.read(arc(i), hints(i, List.of(), with)));
        return with;
    }

    /** Nothing pulls on the tip of a rod whose line is gone: the bend is its own swing, of which only the energy is told. */
    private @Nullable BendReading free(BendReader reader, double[][] raw, int i, @Nullable BendReading before) {
        BendReading swing = reader.read(arc(i), new BendReader.Hints(List.of(), null, Double.NaN, before));
        if (fits(swing)) {
            energy(raw, i, swing);
        }
        return null;
    }

    private static boolean fits(BendReading r) {
        return r.known() && r.misfit() < WORST_MISFIT && r.energyReadSd() < r.energyJ() + 1;
    }

    private void put(double[][] raw, int i, BendReading with, BendReading without) {
        double inertia = without.known() ? INERTIA_SD * (without.newtons() - with.newtons()) : 0;
        raw[0][i] = with.newtons();
        raw[1][i] = Math.hypot(with.readSd(), inertia);
        raw[2][i] = with.force().angle();
        raw[7][i] = with.directionSd();
        energy(raw, i, with);
        raw[6][i] = without.newtons();
    }

    private static void energy(double[][] raw, int i, BendReading r) {
        raw[3][i] = r.energyJ();
        raw[4][i] = Math.max(LEAST_J, r.energyReadSd());
        raw[5][i] = r.shape().bendCentre();
    }

    /**
     * Each frame by itself: a forward stroke is ten frames long, and smoothing over them would flatten its peak. What does not
     * change from frame to frame, stiffness and scale, is added here: a force is EI over a length squared, an energy EI over a
     * length.
     */
    private LoadCurve told(double[] t, double[][] raw) {
        double[] sd = new double[t.length];
        double[] energySd = new double[t.length];
        double common = Math.hypot(blank.stiffnessRelativeSd(), 2 * lengthSd);
        double commonJ = Math.hypot(blank.stiffnessRelativeSd(), lengthSd);
        for (int i = 0; i < t.length; i++) {
            sd[i] = Math.hypot(raw[1][i], common * raw[0][i]);
            energySd[i] = Math.hypot(raw[4][i], commonJ * raw[3][i]);
        }
        return new LoadCurve(
                arcs.stream().mapToDouble(BendArc::clipSeconds).toArray(),
                t,
                raw[0],
                sd,
                raw[2],
                raw[7],
                raw[3],
                energySd,
                raw[5],
                raw[6],
                basis);
    }

    private TracedArc arc(int i) {
        BendArc a = arcs.get(i);
        Polyline line = a.line();
        // A whole blank is as long as it is: what its picture is longer or shorter by is the reading's error.
        double stretch = a.whole() ? blank.lengthM() / line.length() : 1;
        List<Point> points = new ArrayList<>();
        double[] along = new double[13];
        for (int k = 0; k < along.length; k++) {
            double s = line.length() * k / (along.length - 1);
            points.add(line.at(s));
            along[k] = stretch * s;
        }
        double off = Math.abs(stretch - 1) * blank.lengthM();
        return new TracedArc(points, along, a.sd(), 4 * a.sd() + 0.5 * off);
    }

    private BendReader.Hints hints(int i, List<Point> body, @Nullable BendReading near) {
        BendArc a = arcs.get(i);
        Point rig = a.rig();
        if (rig == null || !a.whole()) {
            return new BendReader.Hints(body, null, Double.NaN, near);
        }
        Point line = rig.minus(a.line().last());
        double far = line.norm();
        if (far < LEAST_LINE * blank.lengthM()) {
            return new BendReader.Hints(body, null, Double.NaN, near);
        }
        return new BendReader.Hints(body, line.angle(), Math.hypot(LINE_SD, 2 * a.sd() / far), near);
    }

    /** Acceleration of each station in each frame, m/s². */
    private Point[][] accelerations(double[] t) {
        int n = t.length;
        Point[][] out = new Point[n][STATIONS];
        double[] sd = arcs.stream().mapToDouble(BendArc::sd).toArray();
        for (int k = 0; k < STATIONS; k++) {
            double[] x = new double[n];
            double[] y = new double[n];
            for (int i = 0; i < n; i++) {
                Polyline line = arcs.get(i).line();
                boolean seen = arcs.get(i).whole();
                Point p = line.at(line.length() * k / (STATIONS - 1));
                x[i] = seen ? p.x() : Double.NaN;
                y[i] = seen ? p.y() : Double.NaN;
            }
            double[] ax = StrokeTrends.smoother(step).smooth(t, x, sd).accelerations();
            double[] ay = StrokeTrends.smoother(step).smooth(t, y, sd).accelerations();
            for (int i = 0; i < n; i++) {
                out[i][k] = new Point(ax[i], ay[i]);
            }
        }
        return out;
    }

    /** Weight and inertia along the blank, N/m; the weight alone where no acceleration is known. */
    private List<Point> body(Point[] acceleration) {
        List<Point> out = new ArrayList<>();
        for (int k = 0; k < STATIONS; k++) {
            double m = blank.massAt(blank.lengthM() * k / (STATIONS - 1));
            Point a = acceleration[k];
            boolean known = Double.isFinite(a.x()) && Double.isFinite(a.y());
            out.add(new Point(known ? -m * a.x() : 0, -m * (Stiffness.GRAVITY + (known ? a.y() : 0))));
        }
        return out;
    }
}
