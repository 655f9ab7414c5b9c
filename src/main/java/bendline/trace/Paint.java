package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A tip painted in another colour than the blank: where it begins the curve turns from darker than its background to brighter, or the
 * other way round; before a background of its own brightness the blank seems to end there, and something fainter goes on, or it is the outer
 * end of what was followed. Paint is of one and the same length in every frame, longer and shorter only as the phone's angle has
 * it; line that leads on from the tip shows as far as the background lets it.
 *
 * <p>On 23 drawn clips most faint ends of a rod with a painted tip were alike to within 3 to 6 pixels, at 0.07 to 0.12 free lengths; those of line
 * were spread over up to a third of a free length, short ones being the most frequent. Where curves turn, 67 to 99 % of the lengths
 * beyond were alike on fifteen clips with painted tips, a third on one of a dark rod with light line; there the turn itself is the tip.
 * A dark rod whose line doesn't show turns nowhere.
 *
 * @param length how long it looks, pixels; 0 where none is
 * @param known whether that can be told
 */
record Paint(RodLength.Estimate length, boolean known) {

    /** Nothing is known of it. */
    static final Paint UNKNOWN = new Paint(new RodLength.Estimate(0, 0, 0), false);

    /** No paint: what a curve turns to is line. */
    static final Paint BARE = new Paint(new RodLength.Estimate(0, 0, 1), true);

    /** Shorter paint would be told from line that shows for a little, and longer paint there is none, free lengths. */
    private static final double SHORTEST = 0.06;

    private static final double LONGEST = 0.25;

    /** How far lengths of one paint differ: pixels, and shares of it, as a phone that is not square sees it longer on one side. */
    private static final double ALIKE_PX = 3;

    private static final double ALIKE_SHARE = 0.05;

    /** Share of the faint ends that must be of one length. */
    private static final double LEAST_AGREED = 0.6;

    private static final int FEWEST = 8;

    /** Share of the turns at most that are as far from the end as one another where they are tips, and of the frames at least that show one. */
    private static final double MOST_BY_CHANCE = 0.5;

    private static final double LEAST_TURNING = 0.1;

    /** By how much more or less the outer end's length may go with its direction than the whole rod's is thought to. */
    private static final double MOST_LEAN = 0.3;

    private static final double LEAN_STEP = 0.05;

    /** How often what is alike tells how the length goes with the direction, and that what else is. */
    private static final int ROUNDS = 4;

    /** In so many directions at least, so wide: of a rod that is held still line too shows for one length. */
    private static final int FEWEST_DIRECTIONS = 3;

    private static final double DIRECTION_RAD = Math.toRadians(5);

    /** What the end of paint is uncertain by along the blank, pixels. */
    private static final double END_SD_PX = 2.5;

    /** @param rod how long it looks */
    static Paint of(List<Look> looks, RodLength.Estimate rod) {
        double freePx = rod.freePx();
        List<Fit> shown = chosen(looks);
        List<Fit> faint = shown.stream()
                .filter(f -> faintPx(f) >= SHORTEST * freePx && f.faint().withinPx() <= LONGEST * freePx)
                .toList();
        Paint paint = likeMost(faint, rod);
        List<Fit> painted = paint.painted(faint);
        for (int round = 0; round < ROUNDS && painted.size() >= FEWEST; round++) {
            paint = of(RodLength.ofParts(
                    painted.stream().map(f -> end(f, faintPx(f))).toList()));
            painted = paint.painted(faint);
        }
        boolean told = paint.length.freePx() <= LONGEST * freePx
                && painted.size() >= Math.max(FEWEST, LEAST_AGREED * faint.size())
                && directions(painted) >= FEWEST_DIRECTIONS;
        if (told) {
            return paint;
        }
        return isBare(shown, rod) ? BARE : UNKNOWN;
    }

    /** Paint of such a length. */
    static Paint of(RodLength.Estimate length) {
        return new Paint(length, true);
    }

    /** Whether curves turn at all lengths from their ends, as they do where the turn is the tip and line shows for a while. */
    private static boolean isBare(List<Fit> shown, RodLength.Estimate rod) {
        List<Fit> turning =
                shown.stream().filter(f -> f.faint().paint().turns()).toList();
        return turning.size() >= Math.max(FEWEST, LEAST_TURNING * shown.size())
                && directions(turning) >= FEWEST_DIRECTIONS
                && likeMost(turning, rod).painted(turning).size() < MOST_BY_CHANCE * turning.size();
    }

    /** Of one length in all directions, as the rod's goes with them or more or less steeply. */
    private static Paint likeMost(List<Fit> faint, RodLength.Estimate rod) {
        Paint best = UNKNOWN;
        int most = 0;
        for (double more = -MOST_LEAN; more <= MOST_LEAN; more += LEAN_STEP) {
            RodLength.Estimate way = new RodLength.Estimate(1, 0, 1, rod.lean() + more, rod.squeeze());
            double px = mode(faint.stream()
                    .mapToDouble(f -> faintPx(f) / way.along(end(f, faintPx(f))))
                    .toArray());
            Paint paint = of(new RodLength.Estimate(px, 0, 1, way.lean(), way.squeeze()));
            int alike = paint.painted(faint).size();
            if (alike > most) {
                most = alike;
                best = paint;
            }
        }
        return best;
    }

    private List<Fit> painted(List<Fit> faint) {
        return faint.stream().filter(f -> isLike(f, faintPx(f))).toList();
    }

    private static double faintPx(Fit fit) {
        FaintEnd end = fit.faint();
        return end.paint().turns() ? end.paint().turnedPx() : end.withinPx() + end.beyondPx();
    }

    /** So much of a curve's outer end, straight. */
    private static Polyline end(Fit fit, double px) {
        Point tip = fit.line().last();
        Point out = fit.line()
                .tangentAt(fit.line().length() - Math.min(px, fit.line().length()) / 2);
        return new Polyline(List.of(tip.minus(out.times(px)), tip));
    }

    /** How long the paint looks at a curve's end, pixels. */
    private double px(Fit fit) {
        return length.freePx() == 0 ? 0 : length.along(end(fit, length.freePx()));
    }

    private boolean isLike(Fit fit, double px) {
        return known && Math.abs(px - px(fit)) <= alike(px(fit));
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
        PaintClue clue = fit.faint().paint();
        return clue.turns()
                ? clue.turnedPx() < px(fit) / 2
                : length.freePx() > 0 && isLike(fit, fit.faint().beyondPx());
    }

    /** The curve with the whole painted tip; what is faint at the end of others is line. */
    Fit shown(Fit fit) {
        if (!known || length.freePx() == 0 && !fit.faint().paint().turns()) {
            return fit;
        }
        if (fit.faint().paint().turns()) {
            double turned = fit.faint().paint().turnedPx();
            return fit.with(
                    isLike(fit, turned)
                            ? FaintEnd.TOLD
                            : FaintEnd.turned(turned).lacking(px(fit) - turned));
        }
        if (cuts(fit)) {
            return fit.withTip(
                    FaintEnd.longer(fit.line(), fit.faint().beyondPx()), Math.hypot(fit.alongSdPx(), END_SD_PX));
        }
        if (isLike(fit, faintPx(fit)) || isLike(fit, fit.faint().withinPx())) {
            return fit.with(FaintEnd.NONE);
        }
        return fit.faint().withinPx() == 0 ? fit.with(fit.faint().lacking(px(fit))) : fit;
    }

    /** How far from where a curve turns the tip can be, pixels; as far as you like where no paint is known. */
    double mostPx() {
        return known ? length.freePx() + alike(length.freePx()) : Double.POSITIVE_INFINITY;
    }

    /** A curve that may lack some of the paint with that, and one that may run on beyond it without; itself where neither is known. */
    static Fit mended(Fit fit) {
        PaintClue clue = fit.faint().paint();
        double px = clue.lackPx();
        if (px == 0) {
            return fit;
        }
        Polyline line = fit.line();
        Polyline whole = px > 0 ? FaintEnd.longer(line, px) : line.cut(line.length() + px);
        return clue.turns()
                ? fit.withTip(whole, END_SD_PX).with(FaintEnd.TOLD)
                : fit.withTip(whole, Math.hypot(fit.alongSdPx(), END_SD_PX));
    }

    /** All curves with it. */
    List<Look> shown(List<Look> looks) {
        return !known
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
        double px = length.freePx();
        return px > 0 && 2 * directions(cut) > directions(seen)
                ? new RodLength.Estimate(
                        rod.freePx() + px,
                        Math.hypot(rod.freeSdPx(), 0.5 * px),
                        rod.agreement(),
                        rod.lean(),
                        rod.squeeze())
                : rod;
    }
}
