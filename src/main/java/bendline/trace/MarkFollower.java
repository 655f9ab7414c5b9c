package bendline.trace;

import bendline.geometry.Angles;
import bendline.geometry.Homography;
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

    /** How well a user marks a tip, and how far from where it is expected the end is looked for, pixels and rod lengths. */
    private static final double MARK_SD = 2;

    private static final double END_REACH = 0.06;

    /** The same for where it comes out of the hand, which may have been out of the picture for long. */
    private static final double HAND_REACH = 0.15;

    /** How uncertain the tip becomes with the frames since the mark, share of the length, growing with their root. */
    private static final double LENGTH_DRIFT = 0.02;

    /** How far from where it is expected the blank is looked for, rod lengths. */
    private static final double REACH = 0.04;

    private static final double MOST_REACH = 0.18;

    /** How far a rod is thrust along itself from frame to frame beyond what it did before, rod lengths. */
    private static final double ALONG = 0.01;

    /** How far from a line that was moved as a whole the blank is looked for across it, and then from the line fitted, pixels. */
    private static final double ROUGH_PX = 9;

    private static final double FINE_PX = 4;

    /** Missed frames after which a jerk of the camera is no longer thought of. */
    private static final int JERKS = 2;

    /** How far beside the line the picture is asked for comparison, pixels, and how many times stronger the line must be. */
    private static final double BESIDE_PX = 12;

    private static final double STANDS_OUT = 1.6;

    /** Inner share of a blank that is stiff, and the most that it turns there when bent to the full. */
    private static final double BUTT_SHARE = 0.4;

    private static final double MOST_TURN_RAD = Math.toRadians(40);

    /** Share of a line that must lie in the picture for it to be judged at all. */
    private static final double ENOUGH_IN_VIEW = 0.4;

    /** Share from which on nothing of it need be drawn on. */
    private static final double ALL_IN_VIEW = 0.97;

    private final IntFunction<Plane> planes;
    private final List<Homography> toReference;
    private final List<Double> seconds;
    private final double heightPx;

    /**
     * @param planes a frame's picture in noise units, as it was taken: only so is it known where the picture ends
     * @param toReference from each plane's pixels to coordinates in which the background stands still
     * @param seconds clip time of each frame
     * @param heightPx picture height, pixels
     */
    MarkFollower(IntFunction<Plane> planes, List<Homography> toReference, List<Double> seconds, double heightPx) {
        this.planes = planes;
        this.toReference = toReference;
        this.seconds = seconds;
        this.heightPx = heightPx;
    }

    /**
     * What was followed.
     *
     * @param frame the marked one
     * @param looks one a frame, reference coordinates
     * @param freePx grip to tip along the blank on the marked frame, reference pixels
     */
    record Walk(int frame, List<Look> looks, double freePx) {}

    /**
     * @param grip on the plane of the marked frame, pixels
     * @param tip likewise
     * @return null where no line joins the marks on their frame
     */
    @Nullable
    Walk follow(int frame, Point grip, Point tip) {
        Plane plane = planes.apply(frame);
        LineSearch bright = new LineSearch(plane, 1);
        LineSearch dark = new LineSearch(plane, -1);
        Polyline light = bright.between(grip, tip);
        Polyline shade = dark.between(grip, tip);
        LineSearch search = bright.strength(light) > dark.strength(shade) ? bright : dark;
        Polyline seed = search == bright ? light : shade;
        BlankFitter fitter = new BlankFitter(heightPx, grip, seed.length(), search.polarity());
        Fit first = fitter.fitWhole(plane, seed, 5);
        first = fitter.fitWhole(plane, upTo(first.line(), tip), 4);
        Polyline blank = upTo(first.line(), tip);
        double clear = search.strength(blank);
        if (clear < LEAST_CONTRAST || !standsOut(search, blank)) {
            return null;
        }
        first = first.withTip(blank, 1);
        Look[] looks = new Look[seconds.size()];
        for (int t = 0; t < looks.length; t++) {
            looks[t] = new Look(seconds.get(t), List.of(), null);
        }
        looks[frame] = looks[frame].with(first.inOther(toReference.get(frame)));
        walk(looks, frame, 1, blank, fitter, search.polarity(), clear);
        walk(looks, frame, -1, blank, fitter, search.polarity(), clear);
        return new Walk(frame, List.of(looks), looks[frame].chosen().line().length());
    }

    private void walk(
            Look[] looks, int frame, int direction, Polyline blank, BlankFitter fitter, int polarity, double clear) {
        Polyline last = blank;
        Polyline before = blank;
        double endSd = MARK_SD;
        double handSd = MARK_SD;
        int missed = 0;
        for (int t = frame + direction; t >= 0 && t < looks.length && missed < PATIENCE; t += direction) {
            Homography carry =
                    toReference.get(t - direction).then(toReference.get(t).inverse());
            last = last.map(carry::apply);
            before = before.map(carry::apply);
            double step = missed == 0 ? PathChooser.displacement(before, last) : 0;
            double rodPx = blank.length();
            LineSearch search = new LineSearch(planes.apply(t), polarity);
            double reach = REACH * rodPx + 0.7 * step;
            Polyline moved = search.moved(last, reach, ALONG * rodPx);
            if (step > REACH * rodPx / 4) {
                moved = clearer(search, moved, search.moved(onward(before, last), reach, ALONG * rodPx));
            }
            Held held = at(moved, search, fitter, endSd, handSd);
            boolean holds = holds(held.fit, search, clear);
            if (!holds && missed < JERKS) {
                moved = search.moved(last, MOST_REACH * rodPx, MOST_REACH * rodPx);
                held = at(moved, search, fitter, endSd, handSd);
                holds = holds(held.fit, search, clear);
            }
            if (holds) {
                looks[t] = looks[t].with(reported(held.fit, Math.abs(t - frame)).inOther(toReference.get(t)));
                before = last;
                last = held.fit.line();
                endSd = held.fit.alongSdPx();
                handSd = Math.min(END_REACH * rodPx, held.handSdPx);
                missed = 0;
            } else {
                missed++;
            }
        }
    }

    /** What is said of a fit: a tip so thin may have been given up bit by bit, which no single frame shows. */
    private static Fit reported(Fit fit, int framesFromMark) {
        Polyline line = fit.line();
        double drift = LENGTH_DRIFT * Math.sqrt(framesFromMark) * line.length();
        return fit.withTip(line, Math.hypot(fit.alongSdPx(), drift));
    }

    /**
     * A blank that has been found again.
     *
     * @param fit its line, from the hand to the tip
     * @param handSdPx how well is known where the hand is along it, pixels
     */
    private record Held(Fit fit, double handSdPx) {}

    /** The line on the blank whose ends lie where the picture and what was known before say. */
    private static Held at(Polyline near, LineSearch search, BlankFitter fitter, double endSd, double handSd) {
        double drift = ALONG * near.length();
        Polyline line = clearer(
                search, near, fitter.fitWhole(search.plane(), near, ROUGH_PX).line());
        LineEnd tip = LineEnd.of(search, line, END_REACH * near.length(), Math.hypot(endSd, drift))
                .within(drift);
        line = tip.moved(line);
        LineEnd hand = LineEnd.of(search, line.reversed(), HAND_REACH * near.length(), Math.hypot(handSd, drift));
        line = hand.reached(line.reversed()).reversed();
        Fit fit = fitter.fitWhole(search.plane(), line, FINE_PX);
        Polyline fitted = clearer(search, line, fit.line());
        return new Held(fit.withTip(withoutGuesses(search, fitted, line.length()), tip.sdPx()), hand.sdPx());
    }

    /** A fit bends a line towards anything thin; where that leads it off the blank, it is better left as it was. */
    private static Polyline clearer(LineSearch search, Polyline line, Polyline fitted) {
        Polyline cut = fitted.cut(line.length());
        return search.strength(cut) >= search.strength(line) ? cut : line;
    }

    /** What the picture doesn't show of a line can't be fitted, and would drift from frame to frame: it is drawn on instead. */
    private static Polyline withoutGuesses(LineSearch search, Polyline line, double rodPx) {
        Polyline shown = search.inView(line);
        boolean all = shown == null || shown.length() > ALL_IN_VIEW * line.length();
        return all ? line.cut(rodPx) : ToTheHand.drawn(shown, rodPx, POINTS);
    }

    private static boolean holds(Fit fit, LineSearch search, double clear) {
        Polyline shown = search.inView(fit.line());
        return shown != null
                && shown.length() > ENOUGH_IN_VIEW * fit.line().length()
                && !winds(fit.line())
                && search.strength(shown) >= AS_CLEAR * clear
                && standsOut(search, shown);
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

    /**
     * The line where it will be if it goes on across itself as it did. How far it moved along itself is hardly seen, and taken
     * twice it would run away.
     */
    private static Polyline onward(Polyline before, Polyline last) {
        List<Point> points = new ArrayList<>(POINTS);
        for (int k = 0; k < POINTS; k++) {
            double share = k / (POINTS - 1.0);
            Point t = last.tangentAt(share * last.length());
            Point normal = new Point(-t.y(), t.x());
            Point now = last.at(share * last.length());
            double moved = now.minus(before.at(share * before.length())).dot(normal);
            points.add(now.plus(normal.times(moved)));
        }
        return new Polyline(points);
    }

    /** Whether the ridge on a line is stronger than on lines beside it: in noise and ripples any line shows something. */
    private static boolean standsOut(LineSearch search, Polyline line) {
        var curve = PolynomialCurve.through(line.resampled(POINTS), BlankFitter.DEGREE);
        int stations = (int) Math.max(12, line.length() / Strip.STEP_PX / 2);
        Strip strip = new Strip(
                search.plane(), curve, -1, 2.0 / (stations - 1), stations, BESIDE_PX + 4, i -> 5, search.polarity());
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
