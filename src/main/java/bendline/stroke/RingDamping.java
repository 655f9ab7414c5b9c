package bendline.stroke;

import bendline.signal.Oscillation;
import java.util.stream.IntStream;

/** How fast the ring of the bare rod dies: the rate of decay under which a damped swing fits the tip best. */
final class RingDamping {

    private static final double FROM_SECONDS = 0.06;
    private static final double TO_SECONDS = 0.9;
    private static final int LEAST_FRAMES = 16;
    private static final int TRIALS = 36;
    private static final double SLOWEST = 0.15;
    private static final double FASTEST = 25;

    private RingDamping() {}

    /** Damping over the critical one: with the rate of decay d and the frequency f, d over √(d² + (2πf)²). */
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
        return best <= 0 || best == TRIALS - 1
                ? Found.nothing("the ring is too short or too long to tell how fast it dies")
                : told(decays, left, best, ring.value(), t.length);
    }

    /** The interval holds the decays whose misfit is larger by one part in the degrees of freedom. */
    private static Found told(double[] decays, double[] left, int best, double hz, int n) {
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
        double wide = 0.5 * (decays[high] * Math.sqrt(ratio) - decays[low] / Math.sqrt(ratio));
        double omega = 2 * Math.PI * hz;
        double zeta = decays[best] / Math.hypot(decays[best], omega);
        return new Found(zeta, wide / omega, "decay of the ring after the release, over the critical damping");
    }
}
