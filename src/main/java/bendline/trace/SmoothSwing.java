package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import bendline.trace.Foretold.Sighting;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Every point of a blank moves smoothly across it. Where one frame's outer blank was drawn to a twig or a cloud's edge beside it, the
 * frames just before and after say so: points along the blank go to where these and the frame itself, weighed by what each is good
 * to, put them. In the fastest part of a stroke frames foretell little, and what they show stays as it is.
 */
final class SmoothSwing {

    /**
     * Three frames to either side at 50 or 60 a second. Blanks ring two to six times a second, and in a third of that time they are
     * no parabola any more, so that frames farther apart foretell nothing.
     */
    private static final Foretold.Window WINDOW = new Foretold.Window(0.062, 0, 20);

    private static final int FEWEST = 5;

    /** Of them, before and after. */
    private static final int FEWEST_ASIDE = 2;

    /** Points of the blank that are looked at, from the tip on, shares of the rod's length. */
    private static final double STEP = 0.15;

    private static final int STATIONS = 6;

    /**
     * A blank that stops or is let go turns a corner in time, which no parabola follows; but what lies before such a frame leads up to it,
     * or what lies after it. Of another thing is only what both leave so far off, shares of how far off it is.
     */
    private static final double ALONE = 0.5;

    /** Where it moves on by more from frame to frame, its way is not smooth enough to foretell it, free lengths. */
    private static final double FASTEST = 0.075;

    /** What finding a blank's middle costs anyway, pixels. */
    private static final double SMALL_PX = 1;

    private SmoothSwing() {}

    /** The same looks with blanks put right where they were out of line. */
    static List<Look> steadied(List<Look> looks, RodLength.Estimate rod) {
        List<@Nullable Sighting[]> seen = new ArrayList<>();
        for (Look look : looks) {
            seen.add(stations(look, rod));
        }
        List<Look> out = new ArrayList<>(looks);
        for (int t = 0; t < out.size(); t++) {
            Fit fit = looks.get(t).chosen();
            if (fit != null) {
                out.set(t, looks.get(t).with(fit.onLine(moved(fit, t, looks, seen, rod))));
            }
        }
        return out;
    }

    /** Where the blank's points are in a frame; null where it doesn't reach. */
    private static @Nullable Sighting[] stations(Look look, RodLength.Estimate rod) {
        @Nullable Sighting[] out = new Sighting[STATIONS];
        Fit fit = look.chosen();
        for (int k = 0; k < STATIONS && fit != null; k++) {
            double s = at(fit, k, rod);
            if (s >= 0 && s <= fit.line().length()) {
                double sd = Math.hypot(SMALL_PX, fit.acrossSdPx() * (1 - k * STEP));
                out[k] = new Sighting(fit.line().at(s), across(fit.line(), s), sd, look.seconds());
            }
        }
        return out;
    }

    /** Where a station is along a line, pixels. */
    private static double at(Fit fit, int k, RodLength.Estimate rod) {
        return fit.line().length() + fit.hiddenPx() - k * STEP * rod.along(fit.line());
    }

    private static Point across(Polyline line, double s) {
        Point along = line.tangentAt(s);
        return new Point(-along.y(), along.x());
    }

    private static Polyline moved(
            Fit fit, int t, List<Look> looks, List<@Nullable Sighting[]> seen, RodLength.Estimate rod) {
        double[] by = new double[STATIONS];
        for (int k = 0; k < STATIONS; k++) {
            Sighting own = seen.get(t)[k];
            int station = k;
            List<Sighting> about = WINDOW.about(t, looks, i -> seen.get(i)[station]);
            by[k] = own == null ? 0 : excess(own, about, fit.acrossSdPx() * (1 - k * STEP), FASTEST * rod.freePx());
        }
        Polyline line = fit.line();
        int count = line.points().size();
        double step = STEP * rod.along(line);
        List<Point> out = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double s = line.length() * i / (count - 1);
            double at = Math.max(0, (line.length() + fit.hiddenPx() - s) / step);
            int k = (int) at;
            double here = k < STATIONS ? by[k] : 0;
            double next = k + 1 < STATIONS ? by[k + 1] : 0;
            out.add(line.at(s).minus(across(line, s).times(here + (at - k) * (next - here))));
        }
        return new Polyline(out);
    }

    /**
     * How far a point has to go back across the blank, pixels.
     *
     * @param ownSd what it is uncertain by besides what finding any blank costs
     * @param fastestPx most that it may move on by from frame to frame
     */
    private static double excess(Sighting own, List<Sighting> about, double ownSd, double fastestPx) {
        List<Sighting> before =
                about.stream().filter(s -> s.seconds() < own.seconds()).toList();
        List<Sighting> after = about.subList(before.size(), about.size());
        boolean enough = about.size() >= FEWEST && Math.min(before.size(), after.size()) >= FEWEST_ASIDE;
        if (!enough || step(before.get(before.size() - 1), after.get(0), own) > fastestPx) {
            return 0;
        }
        Foretold foretold = Foretold.at(own.seconds(), about);
        if (foretold == null) {
            return 0;
        }
        double off = own.off(foretold.place());
        double byBefore = off(own, before.get(before.size() - 1), before.get(before.size() - 2));
        double byAfter = off(own, after.get(0), after.get(1));
        boolean alone = Math.min(byBefore * Math.signum(off), byAfter * Math.signum(off)) > ALONE * Math.abs(off);
        return foretold.excess(own, alone && foretold.jumps(own), ownSd);
    }

    /** How far it moves across the blank from one frame to the next, by the nearest on either side. */
    private static double step(Sighting before, Sighting after, Sighting own) {
        return 0.5 * Math.abs(after.place().minus(before.place()).dot(own.way()));
    }

    /** How far a point is off what two others on one side of it foretell. */
    private static double off(Sighting own, Sighting near, Sighting far) {
        double times = (own.seconds() - near.seconds()) / (near.seconds() - far.seconds());
        return own.off(near.place().plus(near.place().minus(far.place()).times(times)));
    }
}
