package bendline.signal;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A damped swing in a series, about a line that may drift: what of {@code 1, t, e⁻ᵈᵗ cos ωt, e⁻ᵈᵗ sin ωt} fits it best.
 *
 * @param hz swings per unit of time
 * @param sdHz its 68 % uncertainty, for samples that err independently
 * @param amplitude mean amplitude over the series, in the series' unit
 * @param explained share of the squares about a straight line that the swing explains, 0 to 1
 */
public record Oscillation(double hz, double sdHz, double amplitude, double explained) {

    /** Frequencies are tried so densely that over the whole series the phase differs by this share of a turn. */
    private static final double PHASE_STEP = 0.02;

    /** A best frequency this near to the end of what was tried, in turns over the series, is none. */
    private static final double AT_THE_END = 0.1;

    private static final int LEAST_SAMPLES = 8;

    /**
     * @param t times, rising
     * @param y values
     * @param lowestHz above 0
     * @param highestHz above the lowest
     * @param decays rates of decay to try, 1 over the unit of time
     * @return null where the best frequency is not inside the range
     */
    public static @Nullable Oscillation of(
            double[] t, double[] y, double lowestHz, double highestHz, double... decays) {
        if (t.length < LEAST_SAMPLES) {
            return null;
        }
        double span = t[t.length - 1] - t[0];
        double still = residualOfLine(t, y);
        double best = Double.POSITIVE_INFINITY;
        double hz = Double.NaN;
        for (double f = lowestHz; f <= highestHz; f += PHASE_STEP / span) {
            for (double decay : decays) {
                double left = residual(t, y, f, decay);
                if (left < best) {
                    best = left;
                    hz = f;
                }
            }
        }
        if (!(hz > lowestHz + AT_THE_END / span) || !(hz < highestHz - AT_THE_END / span) || !(still > 0)) {
            return null;
        }
        double noise = Math.sqrt(best / Math.max(1, t.length - 5));
        double amplitude = Math.sqrt(2 * Math.max(0, still - best) / t.length);
        // Cramér–Rao bound of a single tone's frequency in white noise, amplitude and phase unknown.
        double sd = Math.sqrt(6.0 / t.length) * noise / (Math.PI * span * amplitude);
        return new Oscillation(hz, Math.max(sd, PHASE_STEP / 2 / span), amplitude, 1 - best / still);
    }

    private static double residualOfLine(double[] t, double[] y) {
        double[] one = new double[t.length];
        Arrays.fill(one, 1);
        return LocalPolynomial.fit(t, y, one, t[0], 1).chiSquare();
    }

    private static double residual(double[] t, double[] y, double hz, double decay) {
        double[][] rows = new double[t.length][];
        for (int i = 0; i < t.length; i++) {
            double e = Math.exp(-decay * (t[i] - t[0]));
            double w = 2 * Math.PI * hz * t[i];
            rows[i] = new double[] {1, t[i], e * Math.cos(w), e * Math.sin(w)};
        }
        return LeastSquares.residual(rows, y);
    }
}
