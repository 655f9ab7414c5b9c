package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Looks once more for the blank where it is known which hand holds it and how long it is: out of that hand, and no farther than the
 * rod reaches. A first look, from one place for the whole clip, follows rod and line as one curve where line runs on from the tip, and
 * then finds nothing that could be held where the hands are. Only frames without a curve, or with one that the hand can't hold, are
 * looked at; where nothing better leads out of the hand, they stay as they were.
 */
final class HandSearch {

    private static final int CANDIDATES = 4;

    /** Where curves may begin, shares of the picture's height, as in the first look. */
    private static final double INNER = 0.055;

    /** A body's hand and a length by it are good to a few hundredths; a bent blank reaches less far. */
    private static final double REACH = 1.05;

    /** How far beside the hand a blank may pass, shares of its length. */
    private static final double BESIDE = 0.07;

    /** Least of the blank that must show. */
    private static final double SHORTEST = 0.75;

    /** A curve that is longer than the rod by more than this share of it runs on along the line. */
    private static final double RUNS_ON = 0.015;

    /** What a tip is uncertain by that is put where hand and length say, shares of the length. */
    private static final double BY_LENGTH_SD = 0.02;

    private static final int DRAWN_POINTS = 30;

    private final IntFunction<Plane> planes;
    private final double heightPx;
    private final RodLength.Estimate rod;
    private final Paint paint;

    /**
     * @param planes a frame's difference from what lies behind, noise units
     * @param rod how long it looks from the hand
     * @param paint of its tip
     */
    HandSearch(IntFunction<Plane> planes, double heightPx, RodLength.Estimate rod, Paint paint) {
        this.planes = planes;
        this.heightPx = heightPx;
        this.rod = rod;
        this.paint = paint;
    }

    /**
     * The same looks with other curves chosen in those frames.
     *
     * @param asked frames that are looked at again
     * @param hands where the rod is held, for these frames at least, coordinates of the planes
     */
    List<Look> searched(List<Look> looks, List<Integer> asked, Map<Integer, Point> hands) {
        List<List<Fit>> choices = new ArrayList<>();
        looks.forEach(l -> choices.add(l.chosen() == null ? List.of() : List.of(l.chosen())));
        List<List<Fit>> found = asked.parallelStream()
                .map(t -> fits(planes.apply(t), hands.get(t), looks.get(t).chosen()))
                .toList();
        IntStream.range(0, asked.size()).forEach(k -> choices.set(asked.get(k), found.get(k)));
        @Nullable Fit[] path = new PathChooser(choices, heightPx, rod.freePx()).choose(choices);
        List<Look> out = new ArrayList<>(looks);
        for (int t : asked) {
            if (path[t] != null) {
                out.set(t, looks.get(t).with(path[t]));
            }
        }
        return out;
    }

    private List<Fit> fits(Plane plane, Point hand, @Nullable Fit before) {
        PolarSearch search = new PolarSearch(INNER * heightPx, REACH * rod.freePx());
        BlankFitter fitter = new BlankFitter(heightPx, hand, rod.freePx())
                .upTo(REACH * rod.freePx())
                .painted(paint);
        List<Fit> out = new ArrayList<>();
        for (PolarSearch.Candidate c : search.find(plane, hand, CANDIDATES)) {
            Fit fit = Scouts.underground(c.curve()) ? null : fitter.fit(plane, c.curve(), 14, 7);
            if (fit != null && Confidence.sure(fit) && leadsOut(fit, hand)) {
                out.add(ended(fit, hand));
            }
        }
        if (out.isEmpty() && before != null) {
            out.add(before);
        }
        return out;
    }

    private boolean leadsOut(Fit fit, Point hand) {
        double free = rod.along(fit.line());
        return fit.line().length() > SHORTEST * free && drawn(fit, free).distanceTo(hand) < BESIDE * free;
    }

    /** The curve up to where the rod must end. */
    private Fit ended(Fit fit, Point hand) {
        double free = rod.along(fit.line());
        Polyline drawn = drawn(fit, free);
        double inside = hand.minus(drawn.first()).dot(drawn.tangentAt(0));
        double beyond = drawn.length() - inside - free;
        return fit.faint().paint().told() || beyond < RUNS_ON * free
                ? fit
                : fit.withTip(
                        fit.line().cut(fit.line().length() - beyond), Math.hypot(fit.alongSdPx(), BY_LENGTH_SD * free));
    }

    private static Polyline drawn(Fit fit, double free) {
        return ToTheHand.drawn(fit.line(), Math.max(free, fit.line().length()), DRAWN_POINTS);
    }
}
