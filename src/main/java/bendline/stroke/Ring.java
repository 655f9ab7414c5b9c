package bendline.stroke;

import bendline.signal.LeastSquares;
import bendline.signal.LocalPolynomial;
import bendline.signal.PolynomialFit;
import java.util.Arrays;
import java.util.stream.IntStream;

/** How fast the bare rod rings after the release: a damped swing of the tip about the butt's direction. */
final class Ring {

    private static final double FROM_SECONDS = 0.06;
    private static final double TO_SECONDS = 0.9;
    private static final double LOWEST_HZ = 1.5;
    private static final double HIGHEST_HZ = 12;
    private static final double[] DECAYS = {0.5, 2, 5, 10};

    /** Share of the tip's movement that the swing must explain. */
    private static final double LEAST_EXPLAINED = 0.6;

    private static final double LEAST_PERIODS = 1.5;
    private static final double FRAMES_PER_PERIOD = 3.5;
    private static final int LEAST_FRAMES = 12;

    private Ring() {}

    static Found of(RodSeries rod, double step, double release) {
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
        double span = t[t.length - 1] - t[0];
        double highest = Math.min(HIGHEST_HZ, 1 / (FRAMES_PER_PERIOD * step));
        double lowest = Math.max(LOWEST_HZ, LEAST_PERIODS / span);
        double still = rest(t, y);
        double best = Double.POSITIVE_INFINITY;
        double hz = Double.NaN;
        for (double f = lowest; f <= highest; f += 0.02 / span) {
            for (double decay : DECAYS) {
                double left = left(t, y, f, decay);
                if (left < best) {
                    best = left;
                    hz = f;
                }
            }
        }
        boolean inside = hz > lowest + 0.1 / span && hz < highest - 0.1 / span;
        if (!(best < (1 - LEAST_EXPLAINED) * still) || !inside) {
            return Found.nothing("no clear ringing of the tip was seen after the release");
        }
        double noise = Math.sqrt(best / Math.max(1, t.length - 5));
        double amplitude = Math.sqrt(2 * (still - best) / t.length);
        double sd = Math.sqrt(6.0 / t.length) * noise / (Math.PI * span * amplitude);
        return new Found(
                hz,
                Math.max(2 * sd, 0.02 / span),
                "a damped swing fitted to the tip in " + t.length + " frames after the release");
    }

    /** Squares left by a straight line. */
    private static double rest(double[] t, double[] y) {
        double[] one = new double[t.length];
        Arrays.fill(one, 1);
        PolynomialFit line = LocalPolynomial.fit(t, y, one, t[0], 1);
        return line.chiSquare();
    }

    private static double left(double[] t, double[] y, double hz, double decay) {
        double[][] rows = new double[t.length][];
        for (int i = 0; i < t.length; i++) {
            double e = Math.exp(-decay * (t[i] - t[0]));
            double w = 2 * Math.PI * hz * t[i];
            rows[i] = new double[] {1, t[i], e * Math.cos(w), e * Math.sin(w)};
        }
        return LeastSquares.residual(rows, y);
    }
}
