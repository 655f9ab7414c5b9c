package bendline.stroke;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Puts the fastest moments of the chain's links in order. */
final class ChainReader {

    /** Links whose order is asked for: the lower hand's pull is one movement with the butt's turn and has no place of its own. */
    private static final List<BodyPart> ORDER =
            List.of(BodyPart.HIPS, BodyPart.SHOULDERS, BodyPart.UPPER_HAND, BodyPart.BUTT, BodyPart.TIP);

    private final Stroke stroke;
    private final double slow;
    private final BodyReader.Trends trends;
    private final BodyReader.Span span;

    /** @param slow clip time over real time */
    ChainReader(Stroke stroke, double slow, BodyReader.Trends trends, BodyReader.Span span) {
        this.stroke = stroke;
        this.slow = slow;
        this.trends = trends;
        this.span = span;
    }

    /** The peaks, one a link; puts what follows from them into the measures. */
    List<Peak> peaks(Map<Quantity, Measure> out) {
        Map<BodyPart, Found> at = new EnumMap<>(BodyPart.class);
        PeakFinder find = span.peaks();
        at.put(BodyPart.HIPS, find.rising(trends.hipX(), "the middle of the hips"));
        at.put(BodyPart.SHOULDERS, find.rising(trends.shoulderX(), "the middle of the shoulders"));
        at.put(BodyPart.UPPER_HAND, find.rising(trends.handX(), "the upper hand"));
        at.put(BodyPart.LOWER_HAND, find.falling(trends.toChest(), "the lower hand on its way to the chest"));
        at.put(BodyPart.BUTT, butt());
        at.put(BodyPart.TIP, tip());
        out.put(Quantity.PULL_AFTER_PUSH, gap(Quantity.PULL_AFTER_PUSH, at, BodyPart.UPPER_HAND, BodyPart.LOWER_HAND));
        out.put(Quantity.HIPS_BEFORE_HAND, gap(Quantity.HIPS_BEFORE_HAND, at, BodyPart.HIPS, BodyPart.UPPER_HAND));
        out.put(
                Quantity.SHOULDERS_BEFORE_HAND,
                gap(Quantity.SHOULDERS_BEFORE_HAND, at, BodyPart.SHOULDERS, BodyPart.UPPER_HAND));
        out.put(Quantity.HAND_BEFORE_BUTT, gap(Quantity.HAND_BEFORE_BUTT, at, BodyPart.UPPER_HAND, BodyPart.BUTT));
        out.put(Quantity.PEAK_ORDER, order(at));
        List<Peak> peaks = new ArrayList<>();
        at.forEach((part, found) -> peaks.add(peak(part, found)));
        return peaks;
    }

    private Found butt() {
        Event e = stroke.event(EventKind.FASTEST_TURN);
        return e.seconds() == null
                ? Found.nothing(e.basis())
                : new Found(e.seconds() / slow, e.plusMinusSeconds() / slow, "fastestTurn");
    }

    /** The tip's speed is level near its peak, and noise picks a moment of it: half of the time within a hundredth of it counts. */
    private Found tip() {
        double[] t = stroke.kinematics().realSeconds();
        double[] v = stroke.kinematics().tipSpeedPx();
        int best = -1;
        for (int i = 0; i < t.length; i++) {
            boolean inside = t[i] >= span.start() && t[i] <= span.release() + 0.05;
            if (inside && Double.isFinite(v[i]) && (best < 0 || v[i] > v[best])) {
                best = i;
            }
        }
        if (best < 0) {
            return Found.nothing("the tip was not followed through the forward stroke");
        }
        int first = best;
        int last = best;
        while (first > 0 && v[first - 1] > 0.99 * v[best]) {
            first--;
        }
        while (last + 1 < v.length && v[last + 1] > 0.99 * v[best]) {
            last++;
        }
        double step = t.length > 1 ? (t[t.length - 1] - t[0]) / (t.length - 1) : Double.NaN;
        return new Found(t[best], 0.5 * (t[last] - t[first]) + 0.5 * step, "the smoothed tip, where it is fastest");
    }

    private static Measure gap(Quantity q, Map<BodyPart, Found> at, BodyPart before, BodyPart after) {
        Found a = found(at, before);
        Found b = found(at, after);
        if (!a.known() || !b.known()) {
            return q.unknown(a.known() ? b.basis() : a.basis());
        }
        return q.known(
                b.value() - a.value(),
                Math.hypot(a.sd(), b.sd()),
                "fastest moments of " + before.label() + " and " + after.label());
    }

    /** The largest step back between neighbours of those that are known; negative where all come in order. */
    private static Measure order(Map<BodyPart, Found> at) {
        List<BodyPart> known = ORDER.stream().filter(p -> found(at, p).known()).toList();
        if (known.size() < 3) {
            return Quantity.PEAK_ORDER.unknown("fewer than three links of the chain could be timed");
        }
        double worst = Double.NEGATIVE_INFINITY;
        double sd = Double.NaN;
        String which = "";
        for (int i = 0; i + 1 < known.size(); i++) {
            Found a = found(at, known.get(i));
            Found b = found(at, known.get(i + 1));
            if (a.value() - b.value() > worst) {
                worst = a.value() - b.value();
                sd = Math.hypot(a.sd(), b.sd());
                which = known.get(i).label() + " against " + known.get(i + 1).label();
            }
        }
        return Quantity.PEAK_ORDER.known(worst, sd, which + ", of " + known.size() + " links that could be timed");
    }

    private static Found found(Map<BodyPart, Found> at, BodyPart part) {
        Found f = at.get(part);
        return f == null ? Found.nothing("was not looked for") : f;
    }

    private Peak peak(BodyPart part, Found found) {
        return found.known()
                ? new Peak(part, found.value() * slow, found.sd() * slow, frame(found.value()), found.basis())
                : Peak.unknown(part, found.basis());
    }

    private int frame(double real) {
        double[] t = stroke.kinematics().realSeconds();
        int best = 0;
        for (int i = 1; i < t.length; i++) {
            if (t[i] <= real + 1e-9) {
                best = i;
            }
        }
        return stroke.kinematics().firstFrame() + best;
    }
}
