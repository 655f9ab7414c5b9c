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
 */
record PointScore(Spread errors, Tally seen, Tally lostOrWrong) {

    static final PointScore NONE = new PointScore(Spread.NONE, Tally.NONE, Tally.NONE);

    /** One frame more; frames out of view do not count. */
    PointScore plus(@Nullable Point truth, boolean inView, @Nullable Point found) {
        if (!inView) {
            return this;
        }
        double error = found == null || truth == null ? Double.NaN : found.distance(truth);
        return new PointScore(
                errors.with(new Spread(new double[] {error})),
                seen.plus(found != null),
                lostOrWrong.plus(!(error <= TraceScore.WRONG_PX)));
    }

    PointScore with(PointScore other) {
        return new PointScore(errors.with(other.errors), seen.with(other.seen), lostOrWrong.with(other.lostOrWrong));
    }

    /** Of ours. */
    static PointScore of(TraceScore trace) {
        return new PointScore(trace.tip(), trace.tipSeen(), trace.tipLostOrWrong());
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
