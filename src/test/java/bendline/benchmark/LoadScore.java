package bendline.benchmark;

import bendline.stroke.BendArc;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import org.jspecify.annotations.Nullable;

/**
 * What was read of the bend against the truth.
 *
 * @param pull absolute error of the largest mean pull on the tip, as a share of the true one
 * @param energy absolute error of the largest energy, as a share of the true one
 * @param arcs absolute error of the arcs' chord ratio, the phone's angle undone
 * @param pullWithin pulls within their stated 68 %
 */
public record LoadScore(Spread pull, Spread energy, Spread arcs, Tally pullWithin) {

    /** Nothing. */
    public static final LoadScore NONE = new LoadScore(Spread.NONE, Spread.NONE, Spread.NONE, Tally.NONE);

    static LoadScore of(@Nullable Stroke stroke, TruthCast cast, TruthClip truth) {
        Measure pull = measure(stroke, "peakTipForce");
        Measure energy = measure(stroke, "storedEnergy");
        boolean known = pull != null && pull.value() != null && Double.isFinite(cast.peakPullN());
        return new LoadScore(
                off(pull, cast.peakPullN()),
                off(energy, cast.peakEnergyJ()),
                arcs(stroke, truth),
                known ? Tally.NONE.plus(Math.abs(pull.value() - cast.peakPullN()) <= pull.plusMinus()) : Tally.NONE);
    }

    private static @Nullable Measure measure(@Nullable Stroke stroke, String id) {
        return stroke == null
                ? null
                : stroke.measures().stream()
                        .filter(m -> m.id().equals(id))
                        .findFirst()
                        .orElse(null);
    }

    private static Spread off(@Nullable Measure told, double truth) {
        boolean known = told != null && told.value() != null && Double.isFinite(truth);
        return known ? new Spread(new double[] {Math.abs(told.value() / truth - 1)}) : Spread.NONE;
    }

    private static Spread arcs(@Nullable Stroke stroke, TruthClip truth) {
        if (stroke == null) {
            return Spread.NONE;
        }
        return new Spread(stroke.bend().arcs().stream()
                .filter(BendArc::whole)
                .filter(a -> truth.at(a.clipSeconds()).tipInView())
                .mapToDouble(a -> Math.abs(
                        a.line().first().distance(a.line().last()) / a.line().length()
                                - truth.at(a.clipSeconds()).chordRatio()))
                .toArray());
    }

    /** Both together. */
    LoadScore with(LoadScore other) {
        return new LoadScore(
                pull.with(other.pull),
                energy.with(other.energy),
                arcs.with(other.arcs),
                pullWithin.with(other.pullWithin));
    }
}
