package bendline.flight;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Finds the loss at spool, lip and rings of a kit from casts of which it is known how far they went or how long they took to the
 * clip. Done once for a kit; what is wrong with the drags assumed for rig and line is then in it too.
 */
public final class LossFit {

    /** The loss of a kit nobody has measured: what {@link CommonPractice} comes to. */
    public static final double USUAL = 2.5;

    /** Two in three kits are thought to lie within a factor of nearly two of it; no source. */
    public static final double USUAL_SHARE = 0.6;

    private static final double MOST = 60;
    private static final double PRECISION = 1e-3;
    private static final int DRAWS = 48;

    private static final Flyer FLYER = Flyer.quick();

    private LossFit() {}

    /** What was measured of a cast. */
    public enum Kind {
        /** Where it landed, m; the clip did not stop it. */
        DISTANCE,
        /** When the line came tight on the clip, s after the release. */
        SECONDS_TO_CLIP
    }

    /**
     * A cast that tells something.
     *
     * @param shot how it was thrown, its loss being of no account
     * @param kind what was measured
     * @param value the distance in metres or the time in seconds
     * @param plusMinus how well, 68 %
     */
    public record Known(DoubtfulShot shot, Kind kind, double value, double plusMinus) {}

    /**
     * A fitted loss.
     *
     * @param loss times the pull of the line's own mass
     * @param plusMinus 68 %
     * @param casts it rests on
     * @param says in words how it was found
     */
    public record Fitted(double loss, double plusMinus, int casts, String says) {}

    /**
     * Fits one loss to all the casts, each weighted by how much it tells.
     *
     * @throws IllegalArgumentException where a cast went farther than it can even without any loss, or not so far as with the most
     */
    public static Fitted fit(List<Known> casts) {
        if (casts.isEmpty()) {
            throw new IllegalArgumentException("a loss needs at least one cast of known distance or time to the clip");
        }
        double weights = 0;
        double sum = 0;
        double[] each = new double[casts.size()];
        for (int i = 0; i < casts.size(); i++) {
            Answer one = one(casts.get(i));
            double sd = Math.max(0.02, one.plusMinus());
            each[i] = one.value();
            weights += 1 / (sd * sd);
            sum += each[i] / (sd * sd);
        }
        double mean = sum / weights;
        double inner = 1 / Math.sqrt(weights);
        double outer = casts.size() < 2 ? 0 : spread(each, mean) / Math.sqrt(casts.size());
        double sd = Math.max(inner, outer);
        return new Fitted(
                mean,
                sd,
                casts.size(),
                String.format(
                        Locale.ROOT,
                        "fitted to %d cast%s: %.2f ± %.2f times the pull that the line's own mass needs",
                        casts.size(),
                        casts.size() == 1 ? "" : "s",
                        mean,
                        sd));
    }

    private static double spread(double[] values, double mean) {
        return Math.sqrt(Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum() / (values.length - 1));
    }

    private static Answer one(Known cast) {
        // The drags of rig and line are taken as they are: the loss takes up what is wrong with them.
        DoubtfulShot s = cast.shot().with(cast.shot().doubt().withFittedLoss(0));
        double[][] draws = Draws.normal(DRAWS);
        double[] found = new double[DRAWS];
        int beyond = 0;
        for (int i = 0; i < DRAWS; i++) {
            double measured = cast.value() + cast.plusMinus() * draws[i][Draws.OWN];
            found[i] = loss(s.drawn(draws[i]), cast.kind(), measured);
            if (found[i] == 0 || found[i] == MOST) {
                beyond++;
            }
        }
        if (beyond > 0.8 * DRAWS) {
            throw new IllegalArgumentException(impossible(cast, s));
        }
        return Answer.of(found, "1", "");
    }

    /** The loss at which a shot does what was measured; the nearest possible where none does. */
    private static double loss(Shot shot, Kind kind, double measured) {
        double least = miss(shot, kind, measured, 0);
        if (least <= 0) {
            return 0;
        }
        double loss = Solve.between(0, MOST, PRECISION, k -> miss(shot, kind, measured, k));
        return Double.isNaN(loss) ? MOST : loss;
    }

    /** Positive where more loss is needed. */
    private static double miss(Shot shot, Kind kind, double measured, double loss) {
        double clip =
                kind == Kind.DISTANCE ? Double.POSITIVE_INFINITY : shot.tackle().clipM();
        Flight f = FLYER.fly(shot.with(shot.tackle().withLoss(loss).clippedAt(clip)));
        if (kind == Kind.DISTANCE) {
            return f.distanceM() - measured;
        }
        return f.clipped() ? measured - f.tightSeconds() : -1;
    }

    private static String impossible(Known cast, DoubtfulShot s) {
        double without = FLYER.fly(s.shot().with(s.shot().tackle().withLoss(0).clippedAt(Double.POSITIVE_INFINITY)))
                .distanceM();
        return String.format(
                Locale.ROOT,
                "%.4g %s can't be had with this launch, rig, line and wind: without any loss it would go %.0f m; check the"
                        + " distance, the launch speed, the rig's weight and the wind",
                cast.value(),
                cast.kind() == Kind.DISTANCE ? "m" : "s to the clip",
                without);
    }
}
