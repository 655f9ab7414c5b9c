package bendline.stroke;

import bendline.footage.SlowMotion;
import bendline.geometry.Angles;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup.Side;
import bendline.signal.LocalPolynomial;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.Arrays;
import java.util.List;

/**
 * The raw series a stroke is read from, one entry per decoded frame, in the sense of a cast to one side: x forward, y up,
 * reference pixels, real time. NaN where nothing was measured. Arrays are shared, do not write to them.
 *
 * @param side which way forward is in the picture
 * @param time real seconds, from the first frame
 * @param angle butt angle, radians, without jumps of a whole turn
 * @param angleSd its 68 % uncertainty
 * @param gripX upper hand, forward
 * @param gripY upper hand, up
 * @param gripSd 68 % radius
 * @param tipX tip, forward
 * @param tipY tip, up
 * @param tipSd 68 % radius
 * @param chord distance grip to tip over the blank's length
 * @param chordSd its 68 % uncertainty
 * @param lag angle of the chord behind the butt's direction, radians
 * @param lagSd its 68 % uncertainty
 * @param rigX rig, forward
 * @param rigY rig, up
 * @param rigSd 68 % radius
 * @param shortened by how much the part of the blank that shows is shorter from end to end than along itself, over the whole
 *     blank's length: the compression is no less, tip seen or not
 * @param outside 1 where the tip is out of the picture, else 0
 */
record RodSeries(
        Side side,
        double[] time,
        double[] angle,
        double[] angleSd,
        double[] gripX,
        double[] gripY,
        double[] gripSd,
        double[] tipX,
        double[] tipY,
        double[] tipSd,
        double[] chord,
        double[] chordSd,
        double[] lag,
        double[] lagSd,
        double[] rigX,
        double[] rigY,
        double[] rigSd,
        double[] shortened,
        double[] outside) {

    /** Part of the blank, from the grip on, whose direction at the grip counts as the butt's. */
    private static final double BUTT_SHARE = 0.35;

    private static final int BUTT_POINTS = 9;

    /** Pieces into which a blank is cut to take its length: enough for a bent one, too few to follow jitter. */
    private static final int LENGTH_PIECES = 10;

    /** How far a frame's own blank may differ in length from the rod's usual one: as much as a phone not square makes it. */
    private static final double LENGTH_TOLERANCE = 0.2;

    /** So many uncertainties further from the hand than the rod is long, and it is not the tip. */
    private static final double LONGER = 3;

    /** Least uncertainty of a direction, radians: what a straight line fitted to a drawn polyline can be trusted to. */
    private static final double LEAST_ANGLE_SD = 5e-4;

    /**
     * A direction's uncertainty over a stroke, over that in a single frame: its errors go on for tenths of a second, so that
     * neighbouring frames together tell less than as many that err each on its own. What moments are told to was fitted with it.
     */
    private static final double GOES_ON = 5.0 / 3;

    static RodSeries of(Trace trace, SlowMotion slowMotion, Side side) {
        List<FrameTrace> frames = trace.frames();
        int n = frames.size();
        double[][] a = new double[18][n];
        for (double[] row : a) {
            Arrays.fill(row, Double.NaN);
        }
        double sign = side == Side.RIGHT ? 1 : -1;
        for (int i = 0; i < n; i++) {
            FrameTrace f = frames.get(i);
            a[0][i] = f.seconds() / slowMotion.factor();
            place(f.grip(), sign, i, a[3], a[4], a[5]);
            place(f.tip(), sign, i, a[6], a[7], a[8]);
            place(f.rig(), sign, i, a[13], a[14], a[15]);
            Polyline blank = f.blank();
            if (blank != null) {
                Point d = buttDirection(blank);
                a[1][i] = Math.atan2(-d.y(), sign * d.x());
                a[2][i] = Math.max(LEAST_ANGLE_SD, GOES_ON * f.buttAngleSd());
                lag(f, d, a[2][i], sign, i, a[11], a[12]);
                a[16][i] = (blank.length() - blank.first().distance(blank.last())) / trace.freeLengthPx();
            }
            chord(f, trace, i, a[9], a[10]);
            a[17][i] = outside(f, trace) ? 1 : 0;
        }
        double[] angle = upright(Angles.unwrap(a[1]));
        return new RodSeries(
                side, a[0], angle, a[2], a[3], a[4], a[5], a[6], a[7], a[8], a[9], a[10], a[11], a[12], a[13], a[14],
                a[15], a[16], a[17]);
    }

    private static boolean outside(FrameTrace f, Trace trace) {
        Point tip = f.tip().position();
        if (f.tip().seen() || tip == null) {
            return false;
        }
        Point p = trace.motion().toPicture(f.frame(), tip);
        return p.x() < 0 || p.y() < 0 || p.x() > trace.width() || p.y() > trace.height();
    }

    /** Per frame whether it lies between frames that show the blank and are no farther apart than {@code longest}, real seconds. */
    boolean[] watched(double longest) {
        boolean[] out = new boolean[size()];
        int last = -1;
        for (int i = 0; i < out.length; i++) {
            if (!Double.isNaN(angle[i])) {
                boolean near = last >= 0 && time[i] - time[last] <= longest * (1 + 1e-9);
                Arrays.fill(out, near ? last : i, i + 1, true);
                last = i;
            }
        }
        return out;
    }

    /** Length of the stretch about a time in which no frame shows the blank, real seconds; 0 if it is no longer than {@code longest}. */
    double unseen(double t, double longest) {
        double last = time[0];
        for (int i = 0; i < size(); i++) {
            boolean shown = !Double.isNaN(angle[i]);
            if (shown && time[i] >= t) {
                return time[i] - last > longest * (1 + 1e-9) ? time[i] - last : 0;
            }
            last = shown ? time[i] : last;
        }
        return 0;
    }

    /** Number of frames. */
    int size() {
        return time.length;
    }

    /** The same for the frames {@code from} (included) to {@code to} (excluded). */
    RodSeries slice(int from, int to) {
        return new RodSeries(
                side,
                Arrays.copyOfRange(time, from, to),
                Arrays.copyOfRange(angle, from, to),
                Arrays.copyOfRange(angleSd, from, to),
                Arrays.copyOfRange(gripX, from, to),
                Arrays.copyOfRange(gripY, from, to),
                Arrays.copyOfRange(gripSd, from, to),
                Arrays.copyOfRange(tipX, from, to),
                Arrays.copyOfRange(tipY, from, to),
                Arrays.copyOfRange(tipSd, from, to),
                Arrays.copyOfRange(chord, from, to),
                Arrays.copyOfRange(chordSd, from, to),
                Arrays.copyOfRange(lag, from, to),
                Arrays.copyOfRange(lagSd, from, to),
                Arrays.copyOfRange(rigX, from, to),
                Arrays.copyOfRange(rigY, from, to),
                Arrays.copyOfRange(rigSd, from, to),
                Arrays.copyOfRange(shortened, from, to),
                Arrays.copyOfRange(outside, from, to));
    }

    /** The blank's direction at the grip, pixels: a parabola through its lower part, so that a bend there does not tilt it. */
    static Point buttDirection(Polyline blank) {
        double part = BUTT_SHARE * blank.length();
        double[] s = new double[BUTT_POINTS];
        double[] x = new double[BUTT_POINTS];
        double[] y = new double[BUTT_POINTS];
        double[] one = new double[BUTT_POINTS];
        for (int i = 0; i < BUTT_POINTS; i++) {
            s[i] = part * i / (BUTT_POINTS - 1);
            Point p = blank.at(s[i]);
            x[i] = p.x();
            y[i] = p.y();
            one[i] = 1;
        }
        return new Point(
                LocalPolynomial.fit(s, x, one, 0, 2).derivative(0, 1),
                LocalPolynomial.fit(s, y, one, 0, 2).derivative(0, 1));
    }

    private static void place(Tracked t, double sign, int i, double[] x, double[] y, double[] sd) {
        Point p = t.position();
        if (t.seen() && p != null) {
            x[i] = sign * p.x();
            y[i] = -p.y();
            sd[i] = t.sdPx();
        }
    }

    private static void chord(FrameTrace f, Trace trace, int i, double[] ratio, double[] sd) {
        Point grip = f.grip().position();
        Point tip = f.tip().position();
        if (!f.tip().seen() || tip == null || grip == null) {
            return;
        }
        Polyline blank = f.blank();
        if (blank != null) {
            double length = blank.resampled(LENGTH_PIECES + 1).length();
            if (Math.abs(length / trace.freeLengthPx() - 1) <= LENGTH_TOLERANCE) {
                ratio[i] = Math.min(1, blank.first().distance(blank.last()) / length);
                sd[i] = shapeSd(ratio[i], f.acrossSdPx() / length);
            }
            // A line of another length that ends there contradicts the tip.
            return;
        }
        double apart = grip.distance(tip) / trace.freeLengthPx();
        double ends = Math.hypot(
                f.tip().sdPx(), f.grip().seen() ? f.grip().sdPx() : f.tip().sdPx());
        double apartSd = Math.hypot(ends, apart * trace.freeLengthSdPx()) / trace.freeLengthPx();
        if (apart <= 1 + LONGER * apartSd) {
            ratio[i] = apart;
            sd[i] = apartSd;
        }
    }

    private static void lag(FrameTrace f, Point butt, double buttSd, double sign, int i, double[] lag, double[] sd) {
        Polyline blank = f.blank();
        if (blank != null && f.tip().seen()) {
            Point chord = blank.last().minus(blank.first());
            lag[i] = Math.atan2(-sign * butt.cross(chord), butt.dot(chord));
            sd[i] = Math.hypot(buttSd, f.acrossSdPx() / chord.norm());
        }
    }

    /**
     * Uncertainty of a chord ratio taken from the blank's own curve. With the sagitta s in chords the ratio of a shallow arc is
     * 1 − 8/3 s², so an error ε of the curve counts 16/3·s·ε, and at least its square.
     */
    private static double shapeSd(double ratio, double error) {
        double sagitta = Math.sqrt(Math.max(0, 1 - ratio) * 3 / 8);
        return Math.max(16.0 / 3 * sagitta * error, 8.0 / 3 * error * error) + 2e-4;
    }

    /** Takes off whole turns so that the median lies in the upper half. */
    private static double[] upright(double[] angle) {
        double[] known = Arrays.stream(angle).filter(Double::isFinite).sorted().toArray();
        if (known.length == 0) {
            return angle;
        }
        double median = known[known.length / 2];
        double turns = Math.floor((median + Math.PI / 2) / (2 * Math.PI));
        return Arrays.stream(angle).map(x -> x - turns * 2 * Math.PI).toArray();
    }
}
