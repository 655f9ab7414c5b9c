package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A tip painted in another colour than the blank: before a background of its own brightness the blank seems to end where the paint
 * begins, and something fainter goes on from there, or it is the outer end of what was followed. Paint is of one and the same length
 * in every direction in which the rod is seen; line that leads on from the tip shows as far as the background lets it.
 *
 * <p>On 23 drawn clips most faint ends of a rod with a painted tip were alike to within 3 to 6 pixels, at 0.07 to 0.12 free lengths; those of line
 * were spread over up to a third of a free length, short ones being the most frequent.
 *
 * @param px length of the paint, pixels; 0 where there is none or it can't be told
 */
record Paint(double px) {

    static final Paint NONE = new Paint(0);

    /** Shorter paint would be told from line that shows for a little, and longer paint there is none, free lengths. */
    private static final double SHORTEST = 0.06;

    private static final double LONGEST = 0.25;

    /** How far lengths of one paint differ: pixels, and shares of it, as a phone that is not square sees it longer on one side. */
    private static final double ALIKE_PX = 3;

    private static final double ALIKE_SHARE = 0.05;

    /** Share of the faint ends that must be of one length. */
    private static final double LEAST_AGREED = 0.6;

    private static final int FEWEST = 8;

    /** In so many directions at least, so wide: of a rod that is held still line too shows for one length. */
    private static final int FEWEST_DIRECTIONS = 3;

    private static final double DIRECTION_RAD = Math.toRadians(5);

    /** What the end of paint is uncertain by along the blank, pixels. */
    private static final double END_SD_PX = 2.5;

    /** @param freePx upper hand to tip, pixels */
    static Paint of(List<Look> looks, double freePx) {
        List<Fit> faint = chosen(looks).stream()
                .filter(f -> faintPx(f) >= SHORTEST * freePx && f.faint().withinPx() <= LONGEST * freePx)
                .toList();
        Paint paint = new Paint(mode(faint.stream().mapToDouble(Paint::faintPx).toArray()));
        List<Fit> painted = faint.stream().filter(f -> paint.isLike(faintPx(f))).toList();
        boolean told = paint.px <= LONGEST * freePx
                && painted.size() >= Math.max(FEWEST, LEAST_AGREED * faint.size())
                && directions(painted) >= FEWEST_DIRECTIONS;
        return told ? paint : NONE;
    }

    private static double faintPx(Fit fit) {
        return fit.faint().withinPx() + fit.faint().beyondPx();
    }

    private boolean isLike(double lengthPx) {
        return px > 0 && Math.abs(lengthPx - px) <= alike(px);
    }

    private static double alike(double lengthPx) {
        return ALIKE_PX + ALIKE_SHARE * lengthPx;
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

    /** The middle of the values that are like the one that has the most like it; 0 if there are none. */
    private static double mode(double[] values) {
        double best = 0;
        long most = 0;
        for (double v : values) {
            long near = Arrays.stream(values)
                    .filter(x -> Math.abs(x - v) <= alike(v))
                    .count();
            if (near > most) {
                most = near;
                best = v;
            }
        }
        double about = best;
        double[] near = Arrays.stream(values)
                .filter(x -> Math.abs(x - about) <= alike(about))
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
    private boolean cuts(Fit fit) {
        return isLike(fit.faint().beyondPx());
    }

    /** The curve with the whole painted tip; what is faint at the end of others is line. */
    Fit shown(Fit fit) {
        if (cuts(fit)) {
            List<Point> points = new ArrayList<>(fit.line().points());
            points.add(fit.line().at(fit.line().length() + fit.faint().beyondPx()));
            return fit.withTip(new Polyline(points), Math.hypot(fit.alongSdPx(), END_SD_PX));
        }
        return isLike(faintPx(fit)) || isLike(fit.faint().withinPx()) ? fit.with(FaintEnd.NONE) : fit;
    }

    /** All curves with it. */
    List<Look> shown(List<Look> looks) {
        return px == 0
                ? looks
                : looks.stream()
                        .map(l -> new Look(
                                l.seconds(),
                                l.choices().stream().map(this::shown).toList(),
                                shownOrNone(l.chosen())))
                        .toList();
    }

    private @Nullable Fit shownOrNone(@Nullable Fit fit) {
        return fit == null ? null : shown(fit);
    }

    /**
     * The rod's length, where it was taken from curves that end like these: the middle one of them ends before the paint if most do,
     * all directions counting alike.
     */
    RodLength.Estimate with(RodLength.Estimate rod, List<Look> looks) {
        List<Fit> seen = chosen(looks);
        List<Fit> cut = seen.stream().filter(this::cuts).toList();
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
