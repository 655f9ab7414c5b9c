package bendline.signal;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Smooths an unevenly sampled series and gives its rate and acceleration, with no fixed cut-off: a quintic smoothing spline
 * in its state-space form (Kohn and Ansley, Biometrika 74 (1987) 175, title from memory) whose stiffness changes along the
 * series. At each place the stiffness is the one under which the samples around it are best predicted from the others, so
 * a slow backswing is smoothed over half a second and the quarter second of the forward stroke is not flattened.
 *
 * <p>A sample far from what its neighbours predict loses weight. The samples' stated uncertainties are taken as right up to
 * a common factor, which is estimated within limits.
 */
public final class TrendSmoother {

    /** What a change of the stiffness by a power of ten costs, in units of log-likelihood. */
    private static final double CHANGE_COST = 1.5;

    /** Over how many samples a change is spread: standard deviation. */
    private static final int CORNER_SAMPLES = 1;

    /**
     * Stiffnesses tried: powers of ten of the noise strength, in squared sample uncertainties per fifth power of a step. From one
     * to the next the span over which samples are smoothed together changes by about three quarters.
     */
    private static final double[] EXPONENTS =
            IntStream.rangeClosed(-6, 5).mapToDouble(i -> 1.5 * i).toArray();

    private static final double MIN_SCALE = 0.5;
    private static final double MAX_SCALE = 4;
    private static final int ROUNDS = 2;
    private static final double FAR = 4;
    private static final double START_VARIANCE = 1e8;

    /** Degrees of freedom of the score's tails: a stray sample costs much the same under every stiffness. */
    private static final double TAIL = 4;

    private final double longestBridge;

    /** @param longestBridge longest gap between samples over which values are given, in units of the times; positive */
    public TrendSmoother(double longestBridge) {
        if (!(longestBridge > 0)) {
            throw new IllegalArgumentException("the longest bridge must be positive, got " + longestBridge);
        }
        this.longestBridge = longestBridge;
    }

    /**
     * Smooths a series.
     *
     * @param t times, strictly increasing
     * @param y samples, NaN where there is none
     * @param sd their 68 % uncertainties, positive where there is a sample
     * @return one entry per time; all NaN if there are fewer than four samples
     */
    public Trend smooth(double[] t, double[] y, double[] sd) {
        int[] seen = IntStream.range(0, t.length)
                .filter(i -> Double.isFinite(y[i]) && sd[i] > 0)
                .toArray();
        if (t.length < 4 || seen.length < 4) {
            return nothing(t);
        }
        Scaled s = Scaled.of(t, y, sd, seen);
        double[] weightless = Strays.inflation(t, y, sd, seen);
        double[] strength = new double[t.length];
        double scale = 1;
        for (int round = 0; round < ROUNDS; round++) {
            double[] variance = s.variance(weightless);
            double[][] scores = new double[EXPONENTS.length][];
            double[][] surprise = new double[EXPONENTS.length][];
            for (int k = 0; k < EXPONENTS.length; k++) {
                double[] q = new double[t.length];
                Arrays.fill(q, Math.pow(10, EXPONENTS[k]));
                leaveOneOut(s, q, variance, scores, surprise, k);
            }
            if (round == 0) {
                scale = bestOverall(scores, surprise, seen);
                weightless = larger(weightless, Strays.inflation(t, y, scaled(sd, scale), seen));
            }
            strength = stiffness(scores, surprise, scale, seen, t.length);
            double[][] score = new double[1][];
            double[][] error = new double[1][];
            leaveOneOut(s, strength, variance, score, error, 0);
            scale = clamp(Math.sqrt(centre(error[0], seen)));
            weightless = inflated(weightless, error[0], scale, seen);
        }
        return finish(s, strength, s.variance(weightless), scale, seen);
    }

    private static double[] scaled(double[] x, double factor) {
        return Arrays.stream(x).map(v -> v * factor).toArray();
    }

    private static double[] larger(double[] a, double[] b) {
        return IntStream.range(0, a.length)
                .mapToDouble(i -> Math.max(a[i], b[i]))
                .toArray();
    }

    private static double clamp(double scale) {
        return Math.max(MIN_SCALE, Math.min(MAX_SCALE, scale));
    }

    /** Fills in, per sample, the log of its prediction's variance and its squared error in that variance. */
    private static void leaveOneOut(
            Scaled s, double[] strength, double[] variance, double[][] logVariance, double[][] surprise, int k) {
        FixedIntervalSmoother.Passes p = s.run(strength, variance);
        int n = s.y.length;
        logVariance[k] = new double[n];
        surprise[k] = new double[n];
        for (int i = 0; i < n; i++) {
            double keep = Math.max(1e-9, 1 - p.smoothedCov()[i][0][0] / variance[i]);
            double e = (s.y[i] - p.smoothed()[i][0]) / keep;
            double v = variance[i] / keep;
            logVariance[k][i] = Math.log(v);
            surprise[k][i] = e * e / v;
        }
    }

    /** The common factor of the uncertainties under the one stiffness that predicts all samples best. */
    private static double bestOverall(double[][] logVariance, double[][] surprise, int[] seen) {
        double best = Double.POSITIVE_INFINITY;
        double scale = 1;
        for (int k = 0; k < logVariance.length; k++) {
            double s = clamp(Math.sqrt(centre(surprise[k], seen)));
            double total = 0;
            for (int i : seen) {
                total += score(logVariance[k][i], surprise[k][i], s);
            }
            if (total < best) {
                best = total;
                scale = s;
            }
        }
        return scale;
    }

    /** Mean of a squared normal error, from the median, which strays don't move. */
    private static double centre(double[] squared, int[] seen) {
        double[] sorted =
                Arrays.stream(seen).mapToDouble(i -> squared[i]).sorted().toArray();
        return sorted[sorted.length / 2] / 0.4549;
    }

    private static double score(double logVariance, double surprise, double scale) {
        double u = surprise / (scale * scale);
        return 0.5 * logVariance + Math.log(scale) + 0.5 * (TAIL + 1) * Math.log1p(u / TAIL);
    }

    /**
     * The noise strength over each step: the sequence of stiffnesses with the lowest total score, where every change by a power
     * of ten costs {@link #CHANGE_COST} (Viterbi's algorithm), its corners rounded a little. Between two samples the looser of both
     * holds: what was not seen may have begun with the first or only with the second.
     */
    private static double[] stiffness(double[][] logVariance, double[][] surprise, double scale, int[] seen, int n) {
        int m = EXPONENTS.length;
        double[] total = new double[m];
        int[][] from = new int[seen.length][m];
        for (int j = 0; j < seen.length; j++) {
            double[] next = new double[m];
            for (int k = 0; k < m; k++) {
                int best = cheapest(total, k);
                from[j][k] = best;
                next[k] = total[best]
                        + CHANGE_COST * Math.abs(EXPONENTS[best] - EXPONENTS[k])
                        + score(logVariance[k][seen[j]], surprise[k][seen[j]], scale);
            }
            total = next;
        }
        double[] exponent = new double[n];
        int k = cheapest(total, -1);
        int upTo = n;
        int later = k;
        for (int j = seen.length - 1; j >= 0; j--) {
            Arrays.fill(exponent, j == 0 ? 0 : seen[j], upTo, EXPONENTS[Math.max(k, later)]);
            exponent[seen[j]] = EXPONENTS[k];
            upTo = seen[j];
            later = k;
            k = from[j][k];
        }
        return rounded(exponent);
    }

    /** The stiffness to come from at the lowest cost, to {@code k}; with k −1 the cheapest of all. */
    private static int cheapest(double[] total, int k) {
        int best = 0;
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < total.length; i++) {
            double cost = total[i] + (k < 0 ? 0 : CHANGE_COST * Math.abs(EXPONENTS[i] - EXPONENTS[k]));
            if (cost < lowest) {
                lowest = cost;
                best = i;
            }
        }
        return best;
    }

    private static double[] rounded(double[] exponent) {
        int n = exponent.length;
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = 0;
            double weight = 0;
            for (int j = Math.max(0, i - 3 * CORNER_SAMPLES); j <= Math.min(n - 1, i + 3 * CORNER_SAMPLES); j++) {
                double u = (double) (i - j) / CORNER_SAMPLES;
                double w = Math.exp(-0.5 * u * u);
                sum += w * exponent[j];
                weight += w;
            }
            out[i] = Math.pow(10, sum / weight);
        }
        return out;
    }

    private static double[] inflated(double[] before, double[] surprise, double scale, int[] seen) {
        double[] out = before.clone();
        for (int i : seen) {
            double u = surprise[i] / (scale * scale);
            if (u > FAR * FAR) {
                out[i] *= u;
            }
        }
        return out;
    }

    private Trend finish(Scaled s, double[] strength, double[] variance, double scale, int[] seen) {
        double[] q = Arrays.stream(strength).map(x -> x * scale * scale).toArray();
        double[] r = Arrays.stream(variance).map(x -> x * scale * scale).toArray();
        FixedIntervalSmoother smoother = new FixedIntervalSmoother(Scaled.MODEL, s.t, q, r);
        FixedIntervalSmoother.Passes p = smoother.run(s.y, new double[3], Scaled.start());
        int n = s.y.length;
        boolean[] bridged = bridged(s.times, seen);
        double[] valueSd = new double[n];
        double[] rateSd = new double[n];
        double[] accelerationSd = new double[n];
        for (int i = 0; i < n; i++) {
            double[][] cov = p.smoothedCov()[i];
            valueSd[i] = bridged[i] ? Math.sqrt(Math.max(0, cov[0][0])) * s.unit : Double.NaN;
            rateSd[i] = bridged[i] ? Math.sqrt(Math.max(0, cov[1][1])) * s.unit / s.step : Double.NaN;
            accelerationSd[i] =
                    bridged[i] ? Math.sqrt(Math.max(0, cov[2][2])) * s.unit / (s.step * s.step) : Double.NaN;
        }
        double[][] states = s.unscaled(p.smoothed(), bridged);
        return new Trend(
                s.times,
                states,
                valueSd,
                rateSd,
                accelerationSd,
                scale,
                seed -> draw(s, q, r, new Fit(smoother, p.smoothed(), bridged), new Random(seed)));
    }

    /**
     * What a path is drawn about.
     *
     * @param smoother whose gains are known
     * @param smoothed states
     * @param bridged where there are values
     */
    private record Fit(FixedIntervalSmoother smoother, double[][] smoothed, boolean[] bridged) {}

    /** Durbin and Koopman, Biometrika 89 (2002) 603 (from memory): a path of the model plus what smoothing loses of it. */
    private static Trend.Path draw(Scaled s, double[] q, double[] r, Fit fit, Random random) {
        int n = s.y.length;
        double[][] path = path(s, q, random);
        double[] seen = new double[n];
        for (int i = 0; i < n; i++) {
            double noise = Math.sqrt(r[i]) * random.nextGaussian();
            seen[i] = Double.isNaN(s.y[i]) ? Double.NaN : path[i][0] + noise;
        }
        double[][] found = fit.smoother.again(seen, new double[3]);
        double[][] out = new double[n][];
        for (int i = 0; i < n; i++) {
            out[i] = SmallMatrix.plus(fit.smoothed[i], SmallMatrix.minus(path[i], found[i]));
        }
        double[][] states = s.unscaled(out, fit.bridged);
        double[] rates = Trend.column(states, 1);
        return new Trend.Path(
                new SmoothCurve(s.times, Trend.column(states, 0), rates),
                new SmoothCurve(s.times, rates, Trend.column(states, 2)));
    }

    /** A path of the model alone; steps of the same length share their matrices. */
    private static double[][] path(Scaled s, double[] q, Random random) {
        double[][] path = new double[s.y.length][];
        path[0] = new double[3];
        double last = Double.NaN;
        double[][] root = new double[0][];
        double[][] transition = root;
        for (int i = 1; i < path.length; i++) {
            double dt = s.t[i] - s.t[i - 1];
            if (!(Math.abs(dt - last) <= 1e-9 * dt)) {
                root = SmallMatrix.cholesky(Scaled.MODEL.noise(dt));
                transition = Scaled.MODEL.transition(dt);
                last = dt;
            }
            double size = Math.sqrt(q[i]);
            double[] push = SmallMatrix.times(root, new double[] {
                size * random.nextGaussian(), size * random.nextGaussian(), size * random.nextGaussian()
            });
            path[i] = SmallMatrix.plus(SmallMatrix.times(transition, path[i - 1]), push);
        }
        return path;
    }

    /** Whether each time lies between samples close enough to bridge. */
    private boolean[] bridged(double[] t, int[] seen) {
        boolean[] out = new boolean[t.length];
        for (int k = 0; k < seen.length; k++) {
            out[seen[k]] = true;
            if (k > 0 && t[seen[k]] - t[seen[k - 1]] <= longestBridge * (1 + 1e-9)) {
                Arrays.fill(out, seen[k - 1], seen[k], true);
            }
        }
        return out;
    }

    private static Trend nothing(double[] t) {
        double[][] states = new double[t.length][3];
        for (double[] s : states) {
            Arrays.fill(s, Double.NaN);
        }
        double[] nan = new double[t.length];
        Arrays.fill(nan, Double.NaN);
        Trend.Path unknown = new Trend.Path(new SmoothCurve(t, nan, nan), new SmoothCurve(t, nan, nan));
        return new Trend(t, states, nan, nan, nan, 1, seed -> unknown);
    }

    /** The series in steps and typical uncertainties, so that every number is of order one. */
    private record Scaled(
            double[] times, double[] t, double[] y, double[] variance0, double step, double unit, double zero) {

        static final StateModel MODEL = StateModel.integratedNoise(3);

        static Scaled of(double[] times, double[] y, double[] sd, int[] seen) {
            double[] steps = IntStream.range(1, times.length)
                    .mapToDouble(i -> times[i] - times[i - 1])
                    .sorted()
                    .toArray();
            double step = steps[steps.length / 2];
            double[] sds = Arrays.stream(seen).mapToDouble(i -> sd[i]).sorted().toArray();
            double unit = sds[sds.length / 2];
            double zero = y[seen[0]];
            int n = times.length;
            double[] t = new double[n];
            double[] z = new double[n];
            double[] r = new double[n];
            Arrays.fill(z, Double.NaN);
            Arrays.fill(r, 1);
            for (int i = 0; i < n; i++) {
                t[i] = (times[i] - times[0]) / step;
            }
            for (int i : seen) {
                z[i] = (y[i] - zero) / unit;
                r[i] = sd[i] * sd[i] / (unit * unit);
            }
            return new Scaled(times, t, z, r, step, unit, zero);
        }

        static double[] start() {
            return new double[] {START_VARIANCE, START_VARIANCE, START_VARIANCE};
        }

        FixedIntervalSmoother.Passes run(double[] strength, double[] variance) {
            return new FixedIntervalSmoother(MODEL, t, strength, variance).run(y, new double[3], start());
        }

        double[] variance(double[] factor) {
            double[] out = new double[factor.length];
            for (int i = 0; i < out.length; i++) {
                out[i] = variance0[i] * factor[i];
            }
            return out;
        }

        double[][] unscaled(double[][] states, boolean[] keep) {
            double[][] out = new double[states.length][3];
            for (int i = 0; i < out.length; i++) {
                double factor = keep[i] ? unit : Double.NaN;
                out[i][0] = zero + states[i][0] * factor;
                out[i][1] = states[i][1] * factor / step;
                out[i][2] = states[i][2] * factor / (step * step);
            }
            return out;
        }
    }
}
