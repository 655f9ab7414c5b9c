package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.scene.Mark.Part;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Lays a user's marks over what was followed. On a marked frame the blank runs exactly through the marks. From there the
 * frames before and after are looked at again, each from where the last one was, until what had been followed before lies where
 * it is now expected: so a tip that had been lost on a branch is followed right again on both sides of the mark. Where neither
 * the old line nor the picture fits the mark, nothing is said.
 */
final class Corrector {

    private static final int POINTS = 40;

    /** How far from where it was the blank is looked for on a marked frame, pixels: it is known at its ends. */
    private static final double MARKED_REACH = 6;

    /** Least share of a drawn-on blank that must show, as elsewhere. */
    private static final double SHOWS = 0.4;

    /** Frames in a row that show nothing after which a mark's say ends. */
    private static final int PATIENCE = 6;

    /** How much less is known of where the blank should be with every frame that did not show it, pixels. */
    private static final double UNSURE_PX = 5;

    /** How uncertain the tip becomes with the frames since the mark, share of the length, growing with their root. */
    private static final double LENGTH_DRIFT = 0.01;

    private final IntFunction<Plane> planes;
    private final BlankFitter fitter;
    private final RodLength.Estimate rod;

    /**
     * @param planes a frame's difference from what lies behind, noise units
     * @param rod how long it looks
     */
    Corrector(IntFunction<Plane> planes, BlankFitter fitter, RodLength.Estimate rod) {
        this.planes = planes;
        this.fitter = fitter;
        this.rod = rod;
    }

    /** The looks with the marks obeyed; looks that no mark reaches are the same objects. */
    List<Look> corrected(List<Look> looks, Map<Integer, Pin> pins) {
        List<Look> out = new ArrayList<>(looks);
        for (Pin pin : pins.values()) {
            if (pin.placesRod()) {
                out.set(pin.frame(), out.get(pin.frame()).with(pinned(pin, looks)));
            } else if (pin.hides(Part.TIP) && pin.hides(Part.GRIP)) {
                out.set(pin.frame(), out.get(pin.frame()).with(null));
            }
        }
        for (Pin pin : pins.values()) {
            Fit fit = out.get(pin.frame()).chosen();
            if (pin.placesRod() && fit != null) {
                walk(out, pins, pin.frame(), 1, fit.line());
                walk(out, pins, pin.frame(), -1, fit.line());
            }
        }
        return out;
    }

    /** The blank on a marked frame, from hand to tip; null where a single mark has no blank near in time to go by. */
    private @Nullable Fit pinned(Pin pin, List<Look> looks) {
        Polyline near = near(pin.frame(), looks);
        Point grip = pin.grip();
        Point tip = pin.tip();
        if (near == null) {
            if (grip == null || tip == null) {
                return null;
            }
            near = new Polyline(List.of(grip, tip)).resampled(POINTS);
        }
        grip = grip == null ? near.first() : grip;
        tip = tip == null ? near.last() : tip;
        Polyline line = between(near, grip, tip);
        Fit fit = fitter.fitWhole(planes.apply(pin.frame()), line, MARKED_REACH);
        // The fit is cut where the line was, so that its ends are put back to where they were marked.
        return new Fit(
                between(fit.line(), grip, tip),
                Pin.SD_PX,
                Pin.SD_PX,
                fit.directionSd(),
                fit.blurPx(),
                fit.evidence(),
                1,
                0);
    }

    /** The blank from hand to tip as it was followed or, where it was not, as its neighbours in time say. */
    private @Nullable Polyline near(int t, List<Look> looks) {
        Fit fit = looks.get(t).chosen();
        if (fit != null) {
            return ToTheHand.drawn(fit.line(), rod.along(fit.line()) - fit.hiddenPx(), POINTS);
        }
        Neighbours.Prediction p = Neighbours.at(t, looks);
        return p == null ? null : ToTheHand.drawn(p.line(), rod.along(p.line()), POINTS);
    }

    /** A line turned and stretched so that it runs from one point to another. */
    static Polyline between(Polyline line, Point from, Point to) {
        Point was = line.last().minus(line.first());
        Point is = to.minus(from);
        double n = was.dot(was);
        if (n < 1e-9) {
            return new Polyline(List.of(from, to)).resampled(POINTS);
        }
        double cos = was.dot(is) / n;
        double sin = was.cross(is) / n;
        List<Point> points = new ArrayList<>(line.points().size());
        for (Point p : line.points()) {
            Point d = p.minus(line.first());
            points.add(from.plus(new Point(cos * d.x() - sin * d.y(), sin * d.x() + cos * d.y())));
        }
        return new Polyline(points);
    }

    private void walk(List<Look> looks, Map<Integer, Pin> pins, int from, int direction, Polyline marked) {
        Polyline before = null;
        Polyline last = marked;
        int missed = 0;
        for (int t = from + direction; t >= 0 && t < looks.size() && missed < PATIENCE; t += direction) {
            if (pins.containsKey(t) && pins.get(t).placesRod()) {
                return;
            }
            double step = before == null ? 0 : PathChooser.displacement(before, last);
            Polyline expected = before == null ? last : onward(before, last);
            Fit old = looks.get(t).chosen();
            double apart = Confidence.tolerance(step) + UNSURE_PX * missed;
            if (old != null && PathChooser.displacement(whole(old), expected) < apart) {
                return;
            }
            Fit again = again(t, expected, step, Math.abs(t - from));
            looks.set(t, looks.get(t).with(again));
            missed = again == null ? missed + 1 : 0;
            before = last;
            last = again == null ? expected : again.line();
        }
    }

    /** A followed line with what is hidden of its outer end. */
    private static Polyline whole(Fit fit) {
        return fit.hiddenPx() > 0 ? fit.line().cut(fit.line().length() + fit.hiddenPx()) : fit.line();
    }

    /** Whether two lines speak of one rod: side by side from tip to hand. */
    private static boolean meets(Polyline a, Polyline b, double stepPx) {
        return PathChooser.displacement(a, b) < Confidence.tolerance(stepPx);
    }

    private @Nullable Fit again(int t, Polyline expected, double step, int frames) {
        Plane plane = planes.apply(t);
        double reach = Math.min(40, 10 + 0.5 * step);
        Fit fit = fitter.fit(plane, expected, reach, 8, 6);
        if (Confidence.usable(fit) && meets(fit.line(), expected, step)) {
            return fit;
        }
        Fit whole = fitter.fitWhole(plane, expected, reach);
        double sd = Math.hypot(Pin.SD_PX, LENGTH_DRIFT * Math.sqrt(frames) * expected.length());
        return whole.coverage() >= SHOWS && meets(whole.line(), expected, step)
                ? whole.withTip(whole.line(), sd)
                : null;
    }

    /** Where a line will be if it goes on as it went. */
    private static Polyline onward(Polyline before, Polyline last) {
        List<Point> points = new ArrayList<>(POINTS);
        for (int k = 0; k < POINTS; k++) {
            double fromTip = 1 - k / (POINTS - 1.0);
            Point now = last.at(last.length() * (1 - fromTip));
            Point was = before.at(Math.max(0, before.length() - fromTip * last.length()));
            points.add(now.times(2).minus(was));
        }
        return new Polyline(points);
    }
}
