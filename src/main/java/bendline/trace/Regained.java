package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Frames without a curve that is sure by itself, or whose curve is cut short, are asked again where their neighbours in time say the
 * blank should be: there much less will do, be it one of the curves that were found in the first place or one that is looked for anew.
 *
 * @param planes a frame's difference from what lies behind, noise units
 * @param fitter for the same planes
 * @param pivot about where the hands are, pixels
 * @param rod how long it looks
 */
record Regained(IntFunction<Plane> planes, BlankFitter fitter, Point pivot, RodLength.Estimate rod) {

    /** Least of the blank that must show for the rest to be drawn on, free lengths. */
    private static final double SHORTEST = 0.55;

    /** How far the upper hand strays from the pivot in a cast, free lengths; a reach and a step are about 0.3. */
    private static final double HANDS_WANDER = 0.45;

    /** Where along a curve it is compared, shares of its length: near the hands it may be an arm. */
    private static final List<Double> PLACES = List.of(0.3, 0.5, 0.7, 0.9, 1.0);

    /** How much longer a curve may be than expected, shares, and how far it may slide along itself, times what its end is uncertain by. */
    private static final double MORE = 0.15;

    private static final double SLIDES = 2;

    /** Frames that were regained tell more of those beside them. */
    private static final int ROUNDS = 2;

    /** How much of a curve that kinks near the hand is left, shares of the rod. */
    private static final double CLEAR_OF_KINKS = 0.7;

    /** Whether most of the blank shows and, drawn on, it is held near where the hands are. */
    static boolean held(Fit fit, Point pivot, RodLength.Estimate rod) {
        return fit.line().length() > SHORTEST * rod.freePx()
                && ToTheHand.drawn(fit.line(), rod.along(fit.line()), 2).first().distance(pivot)
                        < HANDS_WANDER * rod.freePx();
    }

    /** The curve of a frame that is where its neighbours say; null if there is none. */
    @Nullable
    Fit at(int t, List<Look> looks) {
        Neighbours.Prediction p = Neighbours.at(t, looks);
        if (p == null) {
            return null;
        }
        List<Fit> any = new ArrayList<>(looks.get(t).choices());
        Fit anew = fitter.fit(planes.apply(t), p.line(), Math.min(40, 10 + 0.5 * p.stepPx()), 8, 6);
        if (anew != null) {
            any.add(anew);
        }
        return any.stream()
                .flatMap(f -> Stream.of(f, Paint.mended(f)))
                .filter(f -> Confidence.usable(f) && held(f, pivot, rod))
                .filter(f -> lies(f, p))
                .min(Comparator.comparingDouble(f -> PathChooser.displacement(f.line(), p.line())))
                .orElse(null);
    }

    /** Whether a curve lies where it should, and ends there as far as its end is known. */
    private static boolean lies(Fit fit, Neighbours.Prediction p) {
        Polyline line = fit.line();
        Polyline expected = FaintEnd.longer(p.line(), MORE * p.line().length());
        double beside = PLACES.stream()
                .mapToDouble(f -> expected.distanceTo(line.at(f * line.length())))
                .average()
                .orElse(0);
        double slid = Math.abs(line.last().minus(p.line().last()).dot(line.tangentAt(line.length())));
        double allowed = Confidence.tolerance(p.stepPx());
        return beside < allowed && slid < allowed + SLIDES * fit.alongSdPx();
    }

    /**
     * The same looks with curves in frames that had none, and with whole ones where the tip was hidden in the one that was taken but
     * another shows it where it should be.
     */
    List<Look> filled(List<Look> looks) {
        List<Look> out = looks;
        for (int round = 0; round < ROUNDS; round++) {
            out = filledOnce(out);
        }
        return out;
    }

    private List<Look> filledOnce(List<Look> looks) {
        List<Look> whole = looks.stream().map(Regained::withHidden).toList();
        List<Look> out = new ArrayList<>(looks);
        Set<Integer> anew = new TreeSet<>();
        for (int t = 0; t < out.size(); t++) {
            Fit before = looks.get(t).chosen();
            Fit fit = before == null || before.hiddenPx() > 0 ? at(t, whole) : null;
            if (fit != null && (before == null || Confidence.sure(fit))) {
                out.set(t, looks.get(t).with(fit));
                anew.add(t);
            }
        }
        for (int t : kinked(out, anew)) {
            Fit fit = Objects.requireNonNull(out.get(t).chosen());
            out.set(t, looks.get(t).with(fit.clearOfHand(CLEAR_OF_KINKS * rod.along(fit.line()))));
        }
        for (int t : kinked(out, anew)) {
            out.set(t, looks.get(t));
        }
        List<Look> steady = TipAnchor.steadied(out, rod);
        anew.forEach(t -> out.set(t, steady.get(t)));
        return out;
    }

    /** With what is hidden drawn on, for its neighbours to go by. */
    private static Look withHidden(Look look) {
        Fit fit = look.chosen();
        return fit == null || fit.hiddenPx() == 0
                ? look
                : look.with(fit.withTip(FaintEnd.longer(fit.line(), fit.hiddenPx()), fit.alongSdPx()));
    }

    private List<Integer> kinked(List<Look> looks, Set<Integer> frames) {
        List<Look> straight = Kinks.removed(looks, rod);
        return frames.stream()
                .filter(t -> looks.get(t).chosen() != null && straight.get(t).chosen() == null)
                .toList();
    }
}
