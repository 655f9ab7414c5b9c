package bendline.trace;

import bendline.geometry.Point;
import bendline.signal.Scatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * Where a point that moves smoothly is, by where it was seen in the frames about one: a parabola in time through these, nearer ones
 * counting more, surer ones too, and those that stick out hardly. Robust locally weighted regression with tricube and
 * biweight (Cleveland, J. Am. Stat. Assoc. 74, 1979, pp. 829–836; cited from memory).
 *
 * @param place pixels
 * @param sd its 68 % uncertainty in one direction, pixels
 */
record Foretold(Point place, double sd) {

    /** What a parabola leaves of the way, pixels. */
    private static final double WAY_PX = 1;

    /** So many uncertainties off what is foretold a sighting is of another thing. */
    private static final double JUMP = 3;

    private static final double LEAST_WEIGHT = 1e-3;

    private static final int ROUNDS = 8;

    /** Scatter over what sightings say of themselves is taken for no less: to leave any out, and to trust the rest. */
    private static final double LEAST_SPREAD = 0.3;

    private static final double LEAST_SCATTER = 0.5;

    /**
     * Where it was seen.
     *
     * @param way unit vector along which that may be off
     * @param sd by so much, pixels
     */
    record Sighting(Point place, Point way, double sd, double seconds) {

        /** How far it lies off along its way, pixels. */
        double off(Point foretold) {
            return place.minus(foretold).dot(way);
        }
    }

    /**
     * Frames that are asked.
     *
     * @param seconds to either side, clip seconds
     * @param fewest frames to either side that are asked though they are farther off
     * @param most frames to either side
     */
    record Window(double seconds, int fewest, int most) {

        /** What was seen in the frames about one, not in its own; null entries are left out. */
        <T> List<T> about(int t, List<Look> looks, IntFunction<@Nullable T> seen) {
            double now = looks.get(t).seconds();
            List<T> out = new ArrayList<>();
            for (int i = Math.max(0, t - most); i <= Math.min(looks.size() - 1, t + most); i++) {
                boolean near =
                        Math.abs(i - t) <= fewest || Math.abs(looks.get(i).seconds() - now) <= seconds;
                T s = i == t || !near ? null : seen.apply(i);
                if (s != null) {
                    out.add(s);
                }
            }
            return out;
        }
    }

    /**
     * What others foretell at a time; null where they don't.
     *
     * @param seconds clip time
     */
    static @Nullable Foretold at(double seconds, List<Sighting> others) {
        double span = others.stream()
                .mapToDouble(s -> Math.abs(s.seconds - seconds))
                .max()
                .orElse(0);
        if (!(span > 0)) {
            return null;
        }
        double[] u =
                others.stream().mapToDouble(s -> (s.seconds - seconds) / span).toArray();
        double[] weight = new double[u.length];
        Arrays.fill(weight, 1);
        double scatter = 1;
        Parabola way = Parabola.of(others, u, weight);
        for (int round = 0; round < ROUNDS && way != null; round++) {
            double[] off = new double[u.length];
            for (int k = 0; k < u.length; k++) {
                off[k] = Math.abs(others.get(k).off(way.at(u[k]))) / others.get(k).sd;
            }
            double[] sorted = off.clone();
            Arrays.sort(sorted);
            scatter = Scatter.SD_OVER_MEDIAN * sorted[sorted.length / 2];
            for (int k = 0; k < u.length; k++) {
                double r = off[k] / (Scatter.BIWEIGHT * Math.max(LEAST_SPREAD, scatter));
                weight[k] = r < 1 ? (1 - r * r) * (1 - r * r) : LEAST_WEIGHT;
            }
            way = Parabola.of(others, u, weight);
        }
        return way == null
                ? null
                : new Foretold(way.at(0), Math.hypot(WAY_PX, way.sdNow * Math.max(LEAST_SCATTER, scatter)));
    }

    /** Whether a sighting is too far off to be of the same thing. */
    boolean jumps(Sighting seen) {
        return Math.abs(seen.off(place)) > JUMP * Math.hypot(sd, seen.sd);
    }

    /**
     * How far along its way a sighting has to go back to where the thing most likely is, pixels: all the way if it is of another thing, else
     * as far as it is less sure than what is foretold.
     *
     * @param another whether it is
     * @param ownSd what of its uncertainty the frames about it do not share
     */
    double excess(Sighting seen, boolean another, double ownSd) {
        double share = another ? 1 : ownSd * ownSd / (ownSd * ownSd + sd * sd);
        return share * seen.off(place);
    }

    /**
     * A way as a parabola in time.
     *
     * @param x coefficients of 1, u and u²
     * @param sdNow uncertainty at u = 0 if sightings are as good as they say
     */
    private record Parabola(double[] x, double[] y, double sdNow) {

        static @Nullable Parabola of(List<Sighting> seen, double[] u, double[] weight) {
            double[][] normal = {{1e-9, 0, 0}, {0, 1e-6, 0}, {0, 0, 1e-6}};
            double[] rx = new double[3];
            double[] ry = new double[3];
            for (int k = 0; k < u.length; k++) {
                Sighting s = seen.get(k);
                double nearness = 1 - Math.pow(0.95 * Math.abs(u[k]), 3);
                double w = weight[k] * nearness * nearness * nearness / (s.sd * s.sd);
                double[] b = {1, u[k], u[k] * u[k]};
                for (int p = 0; p < 3; p++) {
                    rx[p] += w * b[p] * s.place.x();
                    ry[p] += w * b[p] * s.place.y();
                    for (int q = 0; q < 3; q++) {
                        normal[p][q] += w * b[p] * b[q];
                    }
                }
            }
            DecompositionSolver solver = new LUDecomposition(new Array2DRowRealMatrix(normal)).getSolver();
            if (!solver.isNonSingular()) {
                return null;
            }
            double variance =
                    solver.solve(new ArrayRealVector(new double[] {1, 0, 0})).getEntry(0);
            return new Parabola(
                    solver.solve(new ArrayRealVector(rx)).toArray(),
                    solver.solve(new ArrayRealVector(ry)).toArray(),
                    Math.sqrt(variance));
        }

        Point at(double u) {
            return new Point(x[0] + u * x[1] + u * u * x[2], y[0] + u * y[1] + u * u * y[2]);
        }
    }
}
