package bendline.signal;

import java.util.Arrays;

/**
 * A series with its slopes, read between samples by cubic Hermite interpolation. Immutable by convention: the arrays are
 * shared, do not write to them.
 *
 * <p>A stretch between two samples of which one is NaN has no values; crossings and extremes are not looked for in it.
 */
public final class SmoothCurve {

    private static final int HALVINGS = 40;

    /** Values closer than this share of themselves are level: rounding must not choose among them. */
    private static final double LEVEL = 1e-9;

    private final double[] t;
    private final double[] v;
    private final double[] d;

    /**
     * @param t strictly increasing
     * @param v values
     * @param d slopes
     */
    public SmoothCurve(double[] t, double[] v, double[] d) {
        if (t.length < 2 || v.length != t.length || d.length != t.length) {
            throw new IllegalArgumentException("a curve needs two samples with value and slope, got " + t.length + ", "
                    + v.length + ", " + d.length);
        }
        this.t = t;
        this.v = v;
        this.d = d;
    }

    /** First abscissa. */
    public double start() {
        return t[0];
    }

    /** Last abscissa. */
    public double end() {
        return t[t.length - 1];
    }

    /** The same curve upside down. */
    public SmoothCurve negated() {
        return new SmoothCurve(t, scaled(v, -1), scaled(d, -1));
    }

    /** The curve of 1 − v² where this one is of v. */
    public SmoothCurve oneLessSquare() {
        double[] value = new double[v.length];
        double[] slope = new double[v.length];
        for (int i = 0; i < v.length; i++) {
            value[i] = 1 - v[i] * v[i];
            slope[i] = -2 * v[i] * d[i];
        }
        return new SmoothCurve(t, value, slope);
    }

    /** The same curve without values at some of its samples: one entry a sample, false where it is to have none. */
    public SmoothCurve only(boolean[] kept) {
        double[] out = v.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] = kept[i] ? v[i] : Double.NaN;
        }
        return new SmoothCurve(t, out, d);
    }

    /**
     * The curve whose value at each sample is the median of the samples within {@code half} to either side: swings shorter than
     * that are gone, rises and falls stay where they were. NaN stays NaN.
     *
     * @param half in the units of the times, not negative
     */
    public SmoothCurve runningMedian(double half) {
        double[] out = new double[v.length];
        int first = 0;
        int past = 0;
        for (int i = 0; i < v.length; i++) {
            while (t[first] < t[i] - half) {
                first++;
            }
            while (past < t.length && t[past] <= t[i] + half) {
                past++;
            }
            // As many to the left as to the right, so that the ends of a series are not moved.
            int reach = Math.min(i - first, past - 1 - i);
            double[] near = Arrays.stream(v, i - reach, i + reach + 1)
                    .filter(Double::isFinite)
                    .sorted()
                    .toArray();
            int n = near.length;
            out[i] = Double.isNaN(v[i]) ? Double.NaN : (near[(n - 1) / 2] + near[n / 2]) / 2;
        }
        double[] slope = new double[v.length];
        for (int i = 0; i < v.length; i++) {
            int a = i > 0 && Double.isFinite(out[i - 1]) ? i - 1 : i;
            int b = i + 1 < v.length && Double.isFinite(out[i + 1]) ? i + 1 : i;
            slope[i] = a == b ? 0 : (out[b] - out[a]) / (t[b] - t[a]);
        }
        return new SmoothCurve(t, out, slope);
    }

    /** The value at a time; NaN outside the series or in a stretch without values. */
    public double at(double time) {
        if (!(time >= t[0] && time <= end())) {
            return Double.NaN;
        }
        int i = pieceAt(time);
        return hermite(i, time);
    }

    /** The first time in [from, to] at which the curve comes up through {@code level}; NaN if it never does. */
    public double firstRise(double level, double from, double to) {
        for (int i = pieceAt(from); i + 1 < t.length && t[i] < to; i++) {
            double r = riseIn(i, level, from, to);
            if (!Double.isNaN(r)) {
                return r;
            }
        }
        return Double.NaN;
    }

    /** The first time in [from, to] at which the curve is at least {@code level}, be it where its values begin; NaN if it never is. */
    public double firstAtLeast(double level, double from, double to) {
        for (int i = pieceAt(from); i + 1 < t.length && t[i] < to; i++) {
            double lo = Math.max(from, t[i]);
            double r = hermite(i, lo) >= level ? lo : riseIn(i, level, from, to);
            if (!Double.isNaN(r)) {
                return r;
            }
        }
        return Double.NaN;
    }

    /** The last time in [from, to] at which the curve comes up through {@code level}; NaN if it never does. */
    public double lastRise(double level, double from, double to) {
        for (int i = pieceAt(to); i >= 0 && t[i + 1] > from; i--) {
            double r = riseIn(i, level, from, to);
            if (!Double.isNaN(r)) {
                return r;
            }
        }
        return Double.NaN;
    }

    /** The first time in [from, to] at which the curve goes down through {@code level}; NaN if it never does. */
    public double firstFall(double level, double from, double to) {
        return negated().firstRise(-level, from, to);
    }

    /** The last time in [from, to] at which the curve goes down through {@code level}; NaN if it never does. */
    public double lastFall(double level, double from, double to) {
        return negated().lastRise(-level, from, to);
    }

    /** Where the curve is largest in [from, to], the first place if it is level there; NaN where it has no values there. */
    public double argMax(double from, double to) {
        double best = Double.NaN;
        if (!(to >= from)) {
            return best;
        }
        double bestValue = Double.NEGATIVE_INFINITY;
        for (int i = pieceAt(from); i + 1 < t.length && t[i] <= to; i++) {
            double lo = Math.max(from, t[i]);
            double hi = Math.min(to, t[i + 1]);
            if (lo > hi) {
                continue;
            }
            for (double c : candidates(i, lo, hi)) {
                double value = hermite(i, c);
                if (value > bestValue + LEVEL * Math.abs(value)) {
                    bestValue = value;
                    best = c;
                }
            }
        }
        return best;
    }

    /** Where the curve is smallest in [from, to]; NaN where it has no values there. */
    public double argMin(double from, double to) {
        return negated().argMax(from, to);
    }

    /**
     * The end of the last stretch without values in [from, to] that is longer than {@code longest}; {@code from} if there is none.
     */
    public double lastGapEnd(double longest, double from, double to) {
        double gapEnd = to;
        for (int i = pieceAt(to); i >= 0 && t[i + 1] > from; i--) {
            double lo = Math.max(from, t[i]);
            if (!Double.isNaN(v[i]) && !Double.isNaN(v[i + 1])) {
                gapEnd = lo;
            } else if (gapEnd - lo > longest) {
                return gapEnd;
            }
        }
        return from;
    }

    private double riseIn(int i, double level, double from, double to) {
        double lo = Math.max(from, t[i]);
        double hi = Math.min(to, t[i + 1]);
        if (!(hi > lo)) {
            return Double.NaN;
        }
        double a = hermite(i, lo) - level;
        double b = hermite(i, hi) - level;
        if (!(a < 0 && b >= 0)) {
            return Double.NaN;
        }
        for (int k = 0; k < HALVINGS; k++) {
            double mid = 0.5 * (lo + hi);
            if (hermite(i, mid) - level < 0) {
                lo = mid;
            } else {
                hi = mid;
            }
        }
        return 0.5 * (lo + hi);
    }

    /** The ends of a piece and the zeros of its slope. */
    private double[] candidates(int i, double lo, double hi) {
        double h = t[i + 1] - t[i];
        double a = 6 * (v[i] - v[i + 1]) / h + 3 * (d[i] + d[i + 1]);
        double b = 6 * (v[i + 1] - v[i]) / h - 4 * d[i] - 2 * d[i + 1];
        double c = d[i];
        double disc = b * b - 4 * a * c;
        double[] out = {lo, hi, lo, lo};
        if (disc >= 0) {
            double q = -0.5 * (b + Math.copySign(Math.sqrt(disc), b));
            out[2] = inside(t[i] + h * q / a, lo, hi);
            out[3] = inside(t[i] + h * c / q, lo, hi);
        }
        return out;
    }

    private static double inside(double x, double lo, double hi) {
        return x >= lo && x <= hi ? x : lo;
    }

    private double hermite(int i, double time) {
        double h = t[i + 1] - t[i];
        double u = (time - t[i]) / h;
        double w = 1 - u;
        return w * w * (1 + 2 * u) * v[i] + u * u * (3 - 2 * u) * v[i + 1] + h * u * w * (w * d[i] - u * d[i + 1]);
    }

    private int pieceAt(double time) {
        int i = Arrays.binarySearch(t, time);
        int piece = i >= 0 ? i : -i - 2;
        return Math.max(0, Math.min(t.length - 2, piece));
    }

    private static double[] scaled(double[] x, double factor) {
        return Arrays.stream(x).map(e -> e * factor).toArray();
    }
}
