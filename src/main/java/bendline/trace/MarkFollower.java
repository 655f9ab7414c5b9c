package bendline.trace;

import bendline.geometry.Angles;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.geometry.PolynomialCurve;
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

    private static final int POINTS = 40;
    /** Frames without the blank after which it is given up, in each direction. */
    private static final int PATIENCE = 12;
    /** Mean contrast that a line between the marks must have, noise units. */
    private static final double LEAST_CONTRAST = 0.5;

    /** How clear the blank must be in a frame, share of how clear it is in the marked one. */
    private static final double AS_CLEAR = 0.5;

    /** How much longer or shorter than in the marked frame the blank may come to look, and how fast that is believed. */
    private static final double MOST_CHANGE = 1.25;

    private static final double LENGTH_SHARE = 0.5;

    /** How uncertain that leaves the length, share of it, growing with the root of the frames since the mark. */
    private static final double LENGTH_DRIFT = 0.02;

    /** How far from where it is expected the blank is looked for, rod lengths. */
    private static final double REACH = 0.04;

    private static final double MOST_REACH = 0.18;

    /** Missed frames after which a jerk of the camera is no longer thought of. */
    private static final int JERKS = 2;

    /** How far beside the line the picture is asked for comparison, pixels, and how many times stronger the line must be. */
    private static final double BESIDE_PX = 12;

    private static final double STANDS_OUT = 1.6;

    /** Inner share of a blank that is stiff, and the most that it turns there when bent to the full. */
    private static final double BUTT_SHARE = 0.4;

    private static final double MOST_TURN_RAD = Math.toRadians(40);

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
        LineSearch bright = new LineSearch(plane, 1);
        LineSearch dark = new LineSearch(plane, -1);
        Polyline light = bright.between(grip, tip);
        Polyline shade = dark.between(grip, tip);
        LineSearch search = bright.strength(light) > dark.strength(shade) ? bright : dark;
        Polyline seed = search == bright ? light : shade;
        BlankFitter fitter = new BlankFitter(heightPx, grip, seed.length());
        Fit first = fitter.fitWhole(plane, seed, 5);
        first = fitter.fitWhole(plane, upTo(first.line(), tip), 4);
        Polyline blank = upTo(first.line(), tip);
        double clear = search.strength(blank);
        if (clear < LEAST_CONTRAST || !standsOut(plane, blank)) {
            return null;
        }
        first = first.withTip(blank, 1);
        Look[] looks = new Look[seconds.size()];
        for (int t = 0; t < looks.length; t++) {
            looks[t] = new Look(seconds.get(t), List.of(), null);
        }
        looks[frame] = looks[frame].with(first);
        walk(looks, frame, 1, fitter, search.polarity(), clear);
        walk(looks, frame, -1, fitter, search.polarity(), clear);
        return new Followed(List.of(looks), blank.length());
    }

    private void walk(Look[] looks, int frame, int direction, BlankFitter fitter, int polarity, double clear) {
        Polyline last = looks[frame].chosen().line();
        Polyline before = last;
        double marked = last.length();
        double rodPx = marked;
        int missed = 0;
        for (int t = frame + direction; t >= 0 && t < looks.length && missed < PATIENCE; t += direction) {
            Polyline expected = missed == 0 ? onward(before, last) : last;
            double step = PathChooser.displacement(before, last);
            Plane plane = planes.apply(t);
            LineSearch search = new LineSearch(plane, polarity);
            Fit fit = at(search.moved(expected, REACH * rodPx + 0.7 * step), search, fitter, rodPx);
            boolean holds = holds(fit, search, clear);
            if (!holds && missed < JERKS) {
                fit = at(search.moved(expected, MOST_REACH * rodPx), search, fitter, rodPx);
                holds = holds(fit, search, clear);
            }
            if (holds) {
                double lengthSd = LENGTH_DRIFT * Math.sqrt(Math.abs(t - frame)) * marked;
                looks[t] = looks[t].with(fit.withTip(fit.line(), Math.hypot(fit.alongSdPx(), lengthSd)));
                // The camera comes nearer, and a rod that straightens turns more of itself to it.
                double now = Math.max(
                        marked / MOST_CHANGE,
                        Math.min(marked * MOST_CHANGE, fit.line().length()));
                rodPx += LENGTH_SHARE * (now - rodPx);
                before = last;
                last = fit.line().cut(rodPx);
                missed = 0;
            } else {
                missed++;
            }
        }
    }

    private static Fit at(Polyline near, LineSearch search, BlankFitter fitter, double rodPx) {
        Fit fit = fitter.fitWhole(search.plane(), near, 5);
        return fitter.fitWhole(search.plane(), fit.line().cut(rodPx), 4);
    }

    private static boolean holds(Fit fit, LineSearch search, double clear) {
        return !winds(fit.line())
                && search.strength(fit.line()) >= AS_CLEAR * clear
                && standsOut(search.plane(), fit.line());
    }

    /** Whether the inner part, where a blank is stiff, turns away: the line has slid inwards past the hand and winds about there. */
    static boolean winds(Polyline line) {
        double outer = line.tangentAt(BUTT_SHARE * line.length()).angle();
        for (double s = 0; s < BUTT_SHARE; s += 0.02) {
            if (Math.abs(Angles.wrap(line.tangentAt(s * line.length()).angle() - outer)) > MOST_TURN_RAD) {
                return true;
            }
        }
        return false;
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

    /** Whether the ridge on a line is stronger than on lines beside it: in noise and ripples any line shows something. */
    private static boolean standsOut(Plane plane, Polyline line) {
        var curve = PolynomialCurve.through(line.resampled(POINTS), BlankFitter.DEGREE);
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
