package bendline.stroke;

import bendline.signal.SmoothCurve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Finds the casts among everything a rod does in a clip. A cast is a forward turn of the rod over the top that begins behind
 * the upright, is quick, bends the blank, and lets the rig go. A rod that is lifted and put down, carried about, at rest or
 * bent by a fish does not do all of that.
 */
final class CastFinder {

    /** A forward turn that qualifies, in real seconds. */
    record Candidate(double start, double fastest, double end, double peakRate) {}

    /** Slowest forward turn that counts, rad/s of real time. Rods put down or walked with stay under half of it. */
    private static final double LEAST_RATE = Math.toRadians(150);

    /** So that a turn that ends where its rate falls to the least does not begin there again. */
    private static final double JUST_OVER = 1 + 1e-6;

    private static final double LEAST_SWEEP = Math.toRadians(30);

    /** A swing that turns farther than this is a golf club's or a windmill's. */
    private static final double LARGEST_SWEEP = Math.toRadians(190);

    /** Where the turn must begin: behind the upright. */
    private static final double LEAST_START = Math.toRadians(95);

    /** Where it must have got to: over the top, or nearly so where its end is lost. */
    private static final double MOST_END = Math.toRadians(110);

    /** Where it must not end: far under the level. */
    private static final double LEAST_END = Math.toRadians(-35);

    /** Part of the peak rate at which a turn begins and ends. */
    private static final double EDGE = 0.1;

    /** Share of the turn's frames in which the blank must have been seen, or be hidden for no longer than a slip. */
    private static final double LEAST_SEEN = 0.4;

    /** Share of the frames up to so long before and after the turn, real seconds, in which the whole rod must have been seen. */
    private static final double LEAST_WHOLE = 0.3;

    private static final double ABOUT_SECONDS = 0.5;

    /** The forward stroke lasts two tenths of a second; a shorter swing of the rate is a slip of the trace, real seconds. */
    private static final double SLIP_SECONDS = 0.035;

    /** Share of a rate from which another is no slower than it; a push is at least half as fast again as its way back. */
    private static final double AS_FAST = 0.8;

    /** How far off its drop a rig on a tight line seems to be, share. */
    private static final double ON_THE_LINE = 0.07;

    /** How far the distance of a rig that is taken along may be from what is known of its drop, share: a slack line shortens it. */
    private static final double LIKE_THE_DROP = 0.25;

    private static final int LEAST_TAKEN_FRAMES = 5;

    private static final double HARDLY_ANY = 0.25;

    /** From when to when after the turn a line that was let go is gone and the rod still held, real seconds. */
    private static final double LET_GO_SECONDS = 0.25;

    private static final double HELD_SECONDS = 0.8;

    /** Share of the frames that tell, so that a few slips of the trace decide nothing. */
    private static final double MOST_OF_IT = 0.6;

    /** Chord ratio under which no blank lies that only rings or falls: simulated ones stay over 0.95. */
    private static final double CLEARLY_BENT = 0.9;

    private final RodSeries rod;
    private final SmoothCurve forwardRate;
    private final SmoothCurve watchedRate;
    private final SmoothCurve angle;
    private final TurnBend bend;

    /**
     * @param rod the whole clip
     * @param angle its butt angle, smoothed and drawn on through gaps
     * @param forwardRate rate at which the butt angle falls, likewise
     * @param step usual time between frames, real seconds
     */
    CastFinder(RodSeries rod, SmoothCurve angle, SmoothCurve forwardRate, double step) {
        this.rod = rod;
        this.bend = new TurnBend(rod, step);
        this.angle = angle;
        this.forwardRate = forwardRate.runningMedian(SLIP_SECONDS);
        this.watchedRate = this.forwardRate.only(rod.watched(StrokeTrends.bridge(step)));
    }

    /** The casts, in order of time. */
    List<Candidate> find() {
        List<Candidate> out = new ArrayList<>();
        for (Candidate c : turns()) {
            if (qualifies(c) && out.stream().noneMatch(o -> c.start() < o.end() && o.start() < c.end())) {
                out.add(c);
            }
        }
        out.sort(Comparator.comparingDouble(Candidate::start));
        return out;
    }

    /** All quick forward turns, fastest first. */
    private List<Candidate> turns() {
        List<Candidate> out = new ArrayList<>();
        double from = watchedRate.start();
        double end = watchedRate.end();
        while (from < end) {
            double up = watchedRate.firstAtLeast(JUST_OVER * LEAST_RATE, from, end);
            if (Double.isNaN(up)) {
                break;
            }
            double down = firstNotAbove(up, end);
            Candidate c = around(watchedRate.argMax(up, down));
            if (c != null) {
                out.add(c);
            }
            from = down > from ? down : end;
        }
        out.sort(Comparator.comparingDouble(Candidate::peakRate).reversed());
        return out;
    }

    private double firstNotAbove(double up, double end) {
        double down = forwardRate.firstFall(LEAST_RATE, up, end);
        return Double.isNaN(down) ? end : down;
    }

    private @Nullable Candidate around(double fastest) {
        if (Double.isNaN(fastest)) {
            return null;
        }
        double peak = forwardRate.at(fastest);
        double followed = forwardRate.lastGapEnd(0, forwardRate.start(), fastest);
        double start = forwardRate.lastRise(EDGE * peak, followed, fastest);
        double end = forwardRate.firstFall(EDGE * peak, fastest, forwardRate.end());
        return new Candidate(
                Double.isNaN(start) ? followed : start, fastest, Double.isNaN(end) ? forwardRate.end() : end, peak);
    }

    private boolean qualifies(Candidate c) {
        double from = angle.at(c.start());
        double to = angle.at(c.end());
        return overTheTop(from, to)
                && seenShare(c) >= LEAST_SEEN
                && wholeShare(c) >= LEAST_WHOLE
                && !staysBent(c)
                && !keepsTheRig(c)
                && !isWayBack(c)
                && (bend.clear(c) || letsTheRigGo(c));
    }

    private static boolean overTheTop(double from, double to) {
        double sweep = from - to;
        return sweep >= LEAST_SWEEP
                && sweep <= LARGEST_SWEEP
                && from >= LEAST_START
                && to >= LEAST_END
                && to <= MOST_END;
    }

    /**
     * Whether a turn over the top the other way that is as fast follows before a rod would have rested long enough: then this was the
     * way back of a cast to the other side, found or not, or a swing to and fro. Nobody swings back as fast as forward.
     */
    private boolean isWayBack(Candidate c) {
        double fast = -AS_FAST * c.peakRate();
        double until = c.end() + Backswing.LONGEST_SETTLE_SECONDS;
        double from = watchedRate.firstFall(JUST_OVER * fast, c.end(), until);
        while (!Double.isNaN(from)) {
            double slows = watchedRate.firstRise(fast, from, until);
            double to = Double.isNaN(slows) ? until : slows;
            // A slip of the trace may be faster still, and goes nowhere.
            double back = watchedRate.argMin(from, to);
            if (leadsBack(c, back)) {
                return true;
            }
            from = watchedRate.firstFall(JUST_OVER * fast, to, until);
        }
        return false;
    }

    /** Whether a turn the other way, fastest at a time after a turn, goes over the top. */
    private boolean leadsBack(Candidate c, double back) {
        double peak = forwardRate.at(back);
        double start = forwardRate.lastFall(EDGE * peak, c.start(), back);
        double end = forwardRate.firstRise(EDGE * peak, back, forwardRate.end());
        return overTheTop(Math.PI - angle.at(start), Math.PI - angle.at(end));
    }

    /** Share of the turn in which nothing can have happened unseen: a hundredth of a second hides nothing, be it several frames. */
    private double seenShare(Candidate c) {
        boolean[] watched = rod.watched(SLIP_SECONDS);
        return share(c.start(), c.end(), i -> true, i -> watched[i]);
    }

    /** Share of the frames about the turn in which the rod was seen from hand to tip, of those with the tip in the picture. */
    private double wholeShare(Candidate c) {
        return share(
                c.start() - ABOUT_SECONDS,
                c.end() + ABOUT_SECONDS,
                i -> rod.outside()[i] == 0,
                i -> !Double.isNaN(rod.chord()[i]));
    }

    /** Of the frames in a stretch of time that are of a kind, the share for which something holds; 0 if there are none. */
    private double share(double from, double to, IntPredicate kind, IntPredicate holds) {
        int[] asked = IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= from && rod.time()[i] <= to)
                .filter(kind)
                .toArray();
        return asked.length == 0
                ? 0
                : (double) IntStream.of(asked).filter(holds).count() / asked.length;
    }

    /** Whether the rod is seen clearly bent well after the turn: what bends it was not let go. */
    private boolean staysBent(Candidate c) {
        double from = c.end() + LET_GO_SECONDS;
        double to = c.end() + HELD_SECONDS;
        int whole = (int) IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] > from && rod.time()[i] < to)
                .filter(i -> !Double.isNaN(rod.chord()[i]))
                .count();
        return whole > 4
                && share(from, to, i -> !Double.isNaN(rod.chord()[i]), i -> rod.chord()[i] < CLEARLY_BENT)
                        >= MOST_OF_IT;
    }

    /**
     * Whether the rig is seen to be taken along at the end of a tight line through the turn, and to be gone from there soon
     * after: what a rod that is hardly bent throws is thrown all the same.
     */
    private boolean letsTheRigGo(Candidate c) {
        double drop = RigLine.drop(rod, rod.time()[0], c.fastest());
        double[] turning = distances(c.start(), c.end());
        double[] seen =
                DoubleStream.of(turning).filter(Double::isFinite).sorted().toArray();
        if (seen.length < LEAST_TAKEN_FRAMES || seen.length < MOST_OF_IT * turning.length) {
            return false;
        }
        double taken = seen[seen.length / 2];
        long steady = near(seen, taken);
        double[] after = distances(c.end() + LET_GO_SECONDS, c.end() + HELD_SECONDS);
        long kept = DoubleStream.of(after)
                .filter(d -> isNear(d, taken) || isNear(d, drop))
                .count();
        return steady >= MOST_OF_IT * turning.length
                && Math.abs(taken - drop) < LIKE_THE_DROP * drop
                && after.length > 0
                && kept <= HARDLY_ANY * after.length;
    }

    /** Distances tip to rig of the frames of a stretch of time, pixels; NaN where one of them is not seen. */
    private double[] distances(double from, double to) {
        return IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= from && rod.time()[i] <= to)
                .mapToDouble(i -> RigLine.distance(rod, i))
                .toArray();
    }

    private static long near(double[] distances, double drop) {
        return DoubleStream.of(distances).filter(d -> isNear(d, drop)).count();
    }

    private static boolean isNear(double distance, double drop) {
        return Math.abs(distance - drop) <= ON_THE_LINE * drop;
    }

    /** Whether the rig is seen to hang on its drop well after the turn: the line was not let go. */
    private boolean keepsTheRig(Candidate c) {
        double drop = RigLine.drop(rod, rod.time()[0], c.fastest());
        if (Double.isNaN(drop)) {
            return false;
        }
        double[] after = distances(c.end() + LET_GO_SECONDS, c.end() + HELD_SECONDS);
        long near = near(after, drop);
        long far = DoubleStream.of(after).filter(d -> d > 1.15 * drop).count();
        return near > 4 && near >= MOST_OF_IT * after.length && far <= 0.1 * near;
    }
}
