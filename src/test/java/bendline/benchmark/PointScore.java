package bendline.benchmark;

import bendline.geometry.Point;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A followed tip against the true one, by the same rules as {@link TraceScore}.
 *
 * @param errors pixels, where the tip is in view and the tracker says that it has it
 * @param seen of the frames in view: the tracker says that it has it
 * @param lostOrWrong of the frames in view: the tracker says that it lost it, or is wrong
 * @param both its errors and ours in the frames in which both say that they have it, pixels: one that gives up early is only asked
 *     where it is easy
 */
record PointScore(Spread errors, Tally seen, Tally lostOrWrong, Pair both) {

    static final PointScore NONE = new PointScore(Spread.NONE, Tally.NONE, Tally.NONE, Pair.NONE);

    /** Errors in the same frames. */
    record Pair(Spread theirs, Spread ours) {

        static final Pair NONE = new Pair(Spread.NONE, Spread.NONE);

        Pair with(Pair other) {
            return new Pair(theirs.with(other.theirs), ours.with(other.ours));
        }
    }

    /**
     * One frame more; frames out of view do not count.
     *
     * @param found null where the tracker says that it lost it
     * @param ours null where we say so
     */
    PointScore plus(@Nullable Point truth, boolean inView, @Nullable Point found, @Nullable Point ours) {
        if (!inView || truth == null) {
            return this;
        }
        double error = error(found, truth);
        return with(new PointScore(
                spread(error),
                Tally.NONE.plus(found != null),
                Tally.NONE.plus(!(error <= TraceScore.WRONG_PX)),
                found == null || ours == null ? Pair.NONE : new Pair(spread(error), spread(error(ours, truth)))));
    }

    private static double error(@Nullable Point found, Point truth) {
        return found == null ? Double.NaN : found.distance(truth);
    }

    private static Spread spread(double error) {
        return new Spread(new double[] {error});
    }

    PointScore with(PointScore other) {
        return new PointScore(
                errors.with(other.errors),
                seen.with(other.seen),
                lostOrWrong.with(other.lostOrWrong),
                both.with(other.both));
    }

    /** Of ours. */
    static PointScore of(TraceScore trace) {
        return new PointScore(trace.tip(), trace.tipSeen(), trace.tipLostOrWrong(), Pair.NONE);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "tip med %.2f p95 %.2f lost/wrong %.1f%% seen %.1f%%",
                errors.median(),
                errors.p95(),
                100 * lostOrWrong.share(),
                100 * seen.share());
    }
}
