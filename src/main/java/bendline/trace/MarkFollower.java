package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Follows a blank outwards in time from one frame on which grip and tip were marked, in the pictures themselves rather than
 * in differences from a background: for clips in which the background never shows, moves, or holds the rod still.
 */
final class MarkFollower {

    /** How far the blank may stand off the line from mark to mark, share of their distance. */
    private static final double LARGEST_SAG = 0.35;
    /** Price of moving sideways by one offset between stations, and the strength beyond which more does not count. */
    private static final float BEND_PRICE = 1;

    private static final float MOST_STRENGTH = 15;
    private static final int POINTS = 40;
    /** Frames without the blank after which it is given up, in each direction. */
    private static final int PATIENCE = 12;
    /** Share of the rod that must show for a frame to count. */
    private static final double ENOUGH = 0.5;

    /** How far beside the line the picture is asked for comparison, pixels, and how many times stronger the line must be. */
    private static final double BESIDE_PX = 12;

    private static final double STANDS_OUT = 1.6;

    private final IntFunction<Plane> planes;
    private final List<Double> seconds;
    private final double heightPx;

    /**
     * @param planes a frame's picture in noise units, local coordinates
     * @param seconds clip time of each frame
     * @param heightPx picture height, pixels
     */
    MarkFollower(IntFunction<Plane> planes, List<Double> seconds, double heightPx) {
        this.planes = planes;
        this.seconds = seconds;
        this.heightPx = heightPx;
    }

    /**
     * What was followed.
     *
     * @param looks one a frame
     * @param freePx grip to tip along the blank on the marked frame, pixels
     */
    record Followed(List<Look> looks, double freePx) {}

    /** @return null where no line joins the marks on their frame */
    @Nullable
    Followed follow(int frame, Point grip, Point tip) {
        Plane plane = planes.apply(frame);
        Polyline seed = between(plane, grip, tip);
        double free = seed.length();
        BlankFitter fitter = new BlankFitter(heightPx, grip, free);
        Fit first = fitter.fitWhole(plane, seed, 5);
        first = fitter.fitWhole(plane, upTo(first.line(), tip), 4);
        Polyline blank = upTo(first.line(), tip);
        if (first.coverage() < ENOUGH || !standsOut(plane, blank)) {
            return null;
        }
        first = first.withTip(blank, 1);
        Look[] looks = new Look[seconds.size()];
        for (int t = 0; t < looks.length; t++) {
            looks[t] = new Look(seconds.get(t), List.of(), null);
        }
        looks[frame] = looks[frame].with(first);
        walk(looks, frame, 1, fitter);
        walk(looks, frame, -1, fitter);
        return new Followed(List.of(looks), blank.length());
    }

    private void walk(Look[] looks, int frame, int direction, BlankFitter fitter) {
        Polyline last = looks[frame].chosen().line();
        Polyline before = last;
        double rodPx = last.length();
        int missed = 0;
        for (int t = frame + direction; t >= 0 && t < looks.length && missed < PATIENCE; t += direction) {
            Polyline expected = missed == 0 ? onward(before, last) : last;
            double step = PathChooser.displacement(before, last);
            Plane plane = planes.apply(t);
            Fit fit = fitter.fitWhole(plane, expected, Math.min(25, 4 + 0.7 * step + 2 * missed));
            fit = fitter.fitWhole(plane, fit.line().cut(last.length()), 4);
            boolean holds = fit.coverage() >= ENOUGH
                    && standsOut(plane, fit.line())
                    && PathChooser.displacement(fit.line(), expected) < Confidence.tolerance(step) + 2 * missed;
            if (holds) {
                looks[t] = looks[t].with(fit);
                before = last;
                last = fit.line().cut(rodPx);
                missed = 0;
            } else {
                missed++;
            }
        }
    }

    /** The line where it will be if it goes on as it did, outer ends matched. */
    private static Polyline onward(Polyline before, Polyline last) {
        double length = Math.min(before.length(), last.length());
        List<Point> points = new ArrayList<>(POINTS);
        for (int k = 0; k < POINTS; k++) {
            double inside = length * (1 - k / (POINTS - 1.0));
            Point now = last.at(last.length() - inside);
            Point was = before.at(before.length() - inside);
            points.add(now.plus(now.minus(was)));
        }
        return new Polyline(points);
    }

    /** The continuous ridge from mark to mark that is strongest in all, however bent. */
    private static Polyline between(Plane plane, Point grip, Point tip) {
        Polyline chord = new Polyline(List.of(grip, tip));
        double length = chord.length();
        var straight = bendline.geometry.PolynomialCurve.through(chord.resampled(POINTS), 1);
        int stations = (int) (length / Strip.STEP_PX) + 1;
        Strip strip = new Strip(plane, straight, -1, 2.0 / (stations - 1), stations, LARGEST_SAG * length, i -> 5);
        int[] path = pinned(strip);
        Point along = tip.minus(grip).times(1 / length);
        Point normal = new Point(-along.y(), along.x());
        List<Point> points = new ArrayList<>(stations);
        for (int i = 0; i < stations; i++) {
            double s = length * i / (stations - 1);
            points.add(grip.plus(along.times(s)).plus(normal.times(strip.offset(path[i]))));
        }
        Polyline rough = new Polyline(points);
        return bendline.geometry.PolynomialCurve.through(rough.resampled(POINTS), BlankFitter.DEGREE)
                .chain(-1, 1, POINTS);
    }

    /** Best path through a strip that begins and ends in its middle; steps of up to two offsets a station, each at a price. */
    private static int[] pinned(Strip strip) {
        int n = strip.strength.length;
        int m = strip.offsets();
        int middle = m / 2;
        float[][] total = new float[n][m];
        byte[][] from = new byte[n][m];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < m; k++) {
                float best = Float.NEGATIVE_INFINITY;
                for (int d = -2; d <= 2; d++) {
                    int q = k + d;
                    boolean inside = q >= 0 && q < m;
                    float before = i == 0
                            ? (Math.abs(k - middle) <= 2 && d == 0 ? 0 : -1e6f)
                            : inside ? total[i - 1][q] : -1e6f;
                    if (before - BEND_PRICE * Math.abs(d) > best) {
                        best = before - BEND_PRICE * Math.abs(d);
                        from[i][k] = (byte) d;
                    }
                }
                total[i][k] = best + Math.min(MOST_STRENGTH, strip.strength[i][k]);
            }
        }
        int[] path = new int[n];
        path[n - 1] = middle;
        for (int i = n - 1; i > 0; i--) {
            path[i - 1] = path[i] + from[i][path[i]];
        }
        return path;
    }

    /** Whether the ridge on a line is stronger than on lines beside it: in noise and ripples any line shows something. */
    private static boolean standsOut(Plane plane, Polyline line) {
        var curve = bendline.geometry.PolynomialCurve.through(line.resampled(POINTS), BlankFitter.DEGREE);
        int stations = (int) Math.max(12, line.length() / Strip.STEP_PX / 2);
        Strip strip = new Strip(plane, curve, -1, 2.0 / (stations - 1), stations, BESIDE_PX + 4, i -> 5);
        double[] on = new double[stations];
        double[] beside = new double[2 * stations];
        for (int i = 0; i < stations; i++) {
            for (int k = 0; k < strip.offsets(); k++) {
                double offset = strip.offset(k);
                double q = strip.strength[i][k];
                if (Math.abs(offset) <= 2) {
                    on[i] = Math.max(on[i], q);
                } else if (Math.abs(Math.abs(offset) - BESIDE_PX) <= 2) {
                    int at = offset < 0 ? i : stations + i;
                    beside[at] = Math.max(beside[at], q);
                }
            }
        }
        double control = RodEnds.median(beside, 0, beside.length - 1);
        return RodEnds.median(on, 0, stations - 1) > STANDS_OUT * Math.max(0.5, control);
    }

    /** The line cut, or drawn on, so that it ends beside a point. */
    private static Polyline upTo(Polyline line, Point end) {
        double best = line.length();
        for (double s = 0.6 * line.length(); s < 1.3 * line.length(); s += 0.5) {
            best = line.at(s).distance(end) < line.at(best).distance(end) ? s : best;
        }
        return line.cut(best);
    }
}
