package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A tip painted in another colour than the blank, before a background of its own brightness: the blank then seems to end where the
 * paint begins, and something fainter goes on from there. Paint goes on for one and the same length in every direction in which the
 * rod is seen; line that leads on from the tip shows as far as the background lets it.
 *
 * @param px length of the paint, pixels; 0 where there is none or it can't be told
 */
record Paint(double px) {

    static final Paint NONE = new Paint(0);

    /** Shorter paint is left to what measuring the end costs anyway, free lengths; longer paint there is none. */
    private static final double SHORTEST = 0.03;

    private static final double LONGEST = 0.25;

    /** How far lengths of one paint differ, free lengths: a phone that is not square sees it longer on one side. */
    private static final double ALIKE = 0.016;

    /** Least share of the frames, and of those in which something goes on, that must speak of one length. */
    private static final double LEAST_FRAMES = 0.04;

    private static final double LEAST_AGREED = 0.5;

    private static final int FEWEST = 8;

    /** In so many directions at least, so wide: of a rod that is held still line too shows for one length. */
    private static final int FEWEST_DIRECTIONS = 3;

    private static final double DIRECTION_RAD = Math.toRadians(5);

    /** What the end of paint is uncertain by along the blank, pixels. */
    private static final double END_SD_PX = 2.5;

    /** @param freePx upper hand to tip, pixels */
    static Paint of(List<Look> looks, double freePx) {
        List<Fit> seen = chosen(looks);
        double[] on = seen.stream()
                .mapToDouble(Fit::faintPx)
                .filter(x -> x >= SHORTEST * freePx && x <= LONGEST * freePx)
                .toArray();
        double usual = mode(on, ALIKE * freePx);
        Paint paint = new Paint(usual);
        List<Fit> painted = seen.stream().filter(f -> paint.cuts(f, freePx)).toList();
        long goesOn =
                seen.stream().filter(f -> f.faintPx() >= SHORTEST * freePx).count();
        boolean told = painted.size() >= Math.max(FEWEST, LEAST_FRAMES * seen.size())
                && painted.size() >= LEAST_AGREED * goesOn
                && directions(painted) >= FEWEST_DIRECTIONS;
        return told ? paint : NONE;
    }

    private static List<Fit> chosen(List<Look> looks) {
        List<Fit> out = new ArrayList<>();
        for (Look look : looks) {
            Fit fit = look.chosen();
            if (fit != null) {
                out.add(fit);
            }
        }
        return out;
    }

    /** The value that has the most others within a distance; 0 if there are none. */
    private static double mode(double[] values, double alike) {
        double best = 0;
        long most = 0;
        for (double v : values) {
            long near =
                    Arrays.stream(values).filter(x -> Math.abs(x - v) <= alike).count();
            if (near > most) {
                most = near;
                best = v;
            }
        }
        double middle = best;
        double[] near = Arrays.stream(values)
                .filter(x -> Math.abs(x - middle) <= alike)
                .sorted()
                .toArray();
        return near.length == 0 ? 0 : near[near.length / 2];
    }

    private static long directions(List<Fit> fits) {
        return fits.stream()
                .mapToLong(f -> (long)
                        Math.floor(f.line().last().minus(f.line().first()).angle() / DIRECTION_RAD))
                .distinct()
                .count();
    }

    /** Whether a curve ends where the paint begins. */
    private boolean cuts(Fit fit, double freePx) {
        return px > 0 && Math.abs(fit.faintPx() - px) <= ALIKE * freePx;
    }

    /** The curve with the painted tip, where it ends before that. */
    Fit shown(Fit fit, double freePx) {
        if (!cuts(fit, freePx)) {
            return fit;
        }
        List<Point> points = new ArrayList<>(fit.line().points());
        points.add(fit.line().at(fit.line().length() + fit.faintPx()));
        return fit.withTip(new Polyline(points), Math.hypot(fit.alongSdPx(), END_SD_PX));
    }

    /** All curves with it. */
    List<Look> shown(List<Look> looks, double freePx) {
        return px == 0
                ? looks
                : looks.stream()
                        .map(l -> new Look(
                                l.seconds(),
                                l.choices().stream().map(f -> shown(f, freePx)).toList(),
                                shownOrNone(l.chosen(), freePx)))
                        .toList();
    }

    private @Nullable Fit shownOrNone(@Nullable Fit fit, double freePx) {
        return fit == null ? null : shown(fit, freePx);
    }

    /**
     * The rod's length, where it was taken from curves that end like these: the middle one of them ends before the paint if most do,
     * all directions counting alike.
     */
    RodLength.Estimate with(RodLength.Estimate rod, List<Look> looks) {
        List<Fit> seen = chosen(looks);
        List<Fit> cut = seen.stream().filter(f -> cuts(f, rod.freePx())).toList();
        return 2 * directions(cut) > directions(seen)
                ? new RodLength.Estimate(
                        rod.freePx() + px,
                        Math.hypot(rod.freeSdPx(), 0.5 * px),
                        rod.agreement(),
                        rod.lean(),
                        rod.squeeze())
                : rod;
    }
}
