package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Follows a blank outwards in time from one frame on which grip and tip were marked, in the pictures themselves rather than
 * in differences from a background: for clips in which the background never shows, moves, or holds the rod still.
 */
final class MarkFollower {

    /** Sagittas tried between the marks, shares of their distance, and where along the rod the bend sits. */
    private static final double LARGEST_SAG = 0.3;

    private static final int SAGS = 31;
    private static final double[] SKEWS = {0.6, 1, 1.5};
    private static final int POINTS = 40;
    /** Frames without the blank after which it is given up, in each direction. */
    private static final int PATIENCE = 12;
    /** Share of the rod that must show for a frame to count. */
    private static final double ENOUGH = 0.5;

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
    @Nullable Followed follow(int frame, Point grip, Point tip) {
        Plane plane = planes.apply(frame);
        Polyline seed = between(plane, grip, tip);
        double free = seed.length();
        BlankFitter fitter = new BlankFitter(heightPx, grip, free);
        Fit first = fitter.fitWhole(plane, seed, 5);
        first = fitter.fitWhole(plane, upTo(first.line(), tip), 4);
        Polyline blank = upTo(first.line(), tip);
        if (first.coverage() < ENOUGH) {
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
            Fit fit = fitter.fitWhole(plane, expected, Math.min(25, 7 + step));
            fit = fitter.fitWhole(plane, fit.line().cut(last.length()), 4);
            boolean holds = fit.coverage() >= ENOUGH
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

    /** The arc between the marks that shows the strongest ridge. */
    private static Polyline between(Plane plane, Point grip, Point tip) {
        Polyline best = null;
        double most = Double.NEGATIVE_INFINITY;
        for (double skew : SKEWS) {
            for (int k = 0; k < SAGS; k++) {
                double sag = LARGEST_SAG * (2.0 * k / (SAGS - 1) - 1);
                Polyline arc = arc(grip, tip, sag, skew);
                double strength = strength(plane, arc);
                if (strength > most) {
                    most = strength;
                    best = arc;
                }
            }
        }
        return best;
    }

    private static Polyline arc(Point grip, Point tip, double sag, double skew) {
        Point along = tip.minus(grip);
        Point normal = new Point(-along.y(), along.x());
        List<Point> points = new ArrayList<>(POINTS);
        for (int k = 0; k < POINTS; k++) {
            double u = k / (POINTS - 1.0);
            double v = Math.pow(u, skew);
            points.add(grip.plus(along.times(u)).plus(normal.times(4 * sag * v * (1 - v))));
        }
        return new Polyline(points);
    }

    /** Lower quartile of the ridge strength along an arc, so that one strong stretch can't carry a wrong arc. */
    private static double strength(Plane plane, Polyline arc) {
        var curve = bendline.geometry.PolynomialCurve.through(arc, BlankFitter.DEGREE);
        int stations = (int) Math.max(8, arc.length() / Strip.STEP_PX / 2);
        Strip strip = new Strip(plane, curve, -1, 2.0 / stations, stations, 3, i -> 5);
        double[] q = new double[stations];
        for (int i = 0; i < stations; i++) {
            for (float s : strip.strength[i]) {
                q[i] = Math.max(q[i], Math.min(30, s));
            }
        }
        double mean = Arrays.stream(q).average().orElse(0);
        Arrays.sort(q);
        return mean + q[q.length / 4];
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
