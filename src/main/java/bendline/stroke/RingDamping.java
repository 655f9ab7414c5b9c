package bendline.stroke;

import bendline.signal.Oscillation;
import java.util.stream.IntStream;

/** How fast the ring of the bare rod dies: the rate of decay under which a damped swing fits the tip best. */
final class RingDamping {

    /**
     * The ring is read between these, real seconds after the release. Before, the butt is still being stopped and the rod falls, which
     * drives the tip anew: the first swings of simulated casts grow or die at anything from none to four times the rate of the rest.
     */
    private static final double FROM_SECONDS = 0.25;

    private static final double TO_SECONDS = 1.1;
    private static final int LEAST_FRAMES = 16;
    private static final int TRIALS = 36;
    private static final double SLOWEST = 0.15;
    private static final double FASTEST = 25;

    /** A damping whose uncertainty is a larger share of it is none. */
    private static final double UNTOLD = 0.35;

    /** By how much the rate itself changes while the swings get narrower and stir less air, over its value. */
    private static final double SLOWING = 0.07;

    private RingDamping() {}

    /** Damping over the critical one. */
    static Found of(RodSeries rod, double step, double release) {
        Found ring = Ring.of(rod, step, release);
        if (!ring.known()) {
            return ring;
        }
        int[] seen = IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= release + FROM_SECONDS
                        && rod.time()[i] <= release + TO_SECONDS
                        && !Double.isNaN(rod.lag()[i]))
                .toArray();
        if (seen.length < LEAST_FRAMES) {
            return Found.nothing("the tip was seen in too few frames after the release");
        }
        double[] t =
                IntStream.of(seen).mapToDouble(i -> rod.time()[i] - release).toArray();
        double[] y = IntStream.of(seen).mapToDouble(i -> rod.lag()[i]).toArray();
        double[] decays = new double[TRIALS];
        double[] left = new double[TRIALS];
        int best = -1;
        for (int k = 0; k < TRIALS; k++) {
            decays[k] = SLOWEST * Math.pow(FASTEST / SLOWEST, k / (TRIALS - 1.0));
            Oscillation swing = Oscillation.of(t, y, 0.75 * ring.value(), 1.25 * ring.value(), decays[k]);
            left[k] = swing == null ? Double.NaN : 1 - swing.explained();
            if (!Double.isNaN(left[k]) && (best < 0 || left[k] < left[best])) {
                best = k;
            }
        }
        if (best <= 0 || best == TRIALS - 1) {
            return Found.nothing("the ring is too short or too long to tell how fast it dies");
        }
        double decay = between(left, decays, best);
        double half = Math.hypot(SLOWING * decay, half(decays, left, best, t.length));
        return half > UNTOLD * decay
                ? Found.nothing("the ring was not followed well enough to tell how fast it dies")
                : told(decay, half, ring.value());
    }

    /** The lowest point of the parabola through the best trial and its neighbours, over the logarithm of the decay. */
    private static double between(double[] left, double[] decays, int best) {
        double a = left[best - 1];
        double b = left[best];
        double c = left[best + 1];
        double shift = 0.5 * (a - c) / (a - 2 * b + c);
        return Double.isFinite(shift) ? decays[best] * Math.pow(decays[1] / decays[0], shift) : decays[best];
    }

    /** Damping over the critical one, by way of the logarithmic decrement δ: δ/√(4π² + δ²) (textbook). */
    static double overCritical(double decrement) {
        return decrement / Math.hypot(2 * Math.PI, decrement);
    }

    private static Found told(double decay, double halfWidth, double hz) {
        return new Found(
                overCritical(decay / hz),
                halfWidth / (2 * Math.PI * hz),
                "decay of the ring after the release, over the critical damping; the air's share in wide swings, as much again as the"
                        + " blank's own, is in it");
    }

    /** Half the interval of the decays whose misfit is larger by no more than one part in the degrees of freedom. */
    private static double half(double[] decays, double[] left, int best, int n) {
        double limit = left[best] * (1 + 2.0 / Math.max(1, n - 6));
        int low = best;
        int high = best;
        while (low > 0 && left[low - 1] <= limit) {
            low--;
        }
        while (high < decays.length - 1 && left[high + 1] <= limit) {
            high++;
        }
        double ratio = decays[1] / decays[0];
        return 0.5 * (decays[high] * Math.sqrt(ratio) - decays[low] / Math.sqrt(ratio));
    }
}
