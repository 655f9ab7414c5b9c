package bendline.signal;

/**
 * Kalman filter forward, Rauch–Tung–Striebel backward (AIAA Journal 3 (1965) 1445), over unevenly spaced samples of a state's
 * first component. A sample that is NaN is not measured; the state there is predicted.
 */
final class FixedIntervalSmoother {

    private final StateModel model;
    private final double[] t;
    private final double[] strength;
    private final double[] variance;
    private final double[][][] transitions;
    private final double[][][] noises;
    private final double[][] gains;
    private final double[][][] backs;

    /**
     * @param model how the state moves
     * @param t sample times, increasing
     * @param strength of the random part over the step that leads to each sample; entry 0 is not used
     * @param variance of each sample's error, positive
     */
    FixedIntervalSmoother(StateModel model, double[] t, double[] strength, double[] variance) {
        this.model = model;
        this.t = t;
        this.strength = strength;
        this.variance = variance;
        this.transitions = new double[t.length][][];
        this.noises = new double[t.length][][];
        this.gains = new double[t.length][];
        this.backs = new double[t.length][][];
        prepare();
    }

    /** Steps of the same length share their matrices. */
    private void prepare() {
        double last = Double.NaN;
        for (int k = 1; k < t.length; k++) {
            double dt = t[k] - t[k - 1];
            boolean same = Math.abs(dt - last) <= 1e-9 * dt;
            transitions[k] = same ? transitions[k - 1] : model.transition(dt);
            noises[k] = same ? noises[k - 1] : model.noise(dt);
            last = same ? last : dt;
        }
    }

    /**
     * What the passes found. State arrays are {@code [sample][component]}, covariances {@code [sample][row][column]}.
     *
     * @param filtered state after each sample
     * @param filteredCov its covariance
     * @param smoothed state given all samples
     * @param smoothedCov its covariance
     * @param gain last filter gain of the first two components
     */
    record Passes(
            double[][] filtered,
            double[][][] filteredCov,
            double[][] smoothed,
            double[][][] smoothedCov,
            double[] gain) {}

    /** Both passes over the samples, from a start state of the given mean and diagonal covariance. */
    Passes run(double[] y, double[] startMean, double[] startVariance) {
        int n = t.length;
        int m = model.size();
        double[][] predicted = new double[n][];
        double[][][] predictedCov = new double[n][][];
        double[][] filtered = new double[n][];
        double[][][] filteredCov = new double[n][][];
        double[] gain = new double[m];
        double[] mean = startMean.clone();
        double[][] cov = SmallMatrix.diagonal(startVariance);
        for (int k = 0; k < n; k++) {
            if (k > 0) {
                mean = SmallMatrix.times(transitions[k], mean);
                cov = SmallMatrix.plusScaled(SmallMatrix.sandwich(transitions[k], cov), noises[k], strength[k]);
            }
            predicted[k] = mean;
            predictedCov[k] = cov;
            if (!Double.isNaN(y[k])) {
                gain = gain(cov, variance[k]);
                gains[k] = gain;
                mean = corrected(mean, gain, y[k] - mean[0]);
                cov = SmallMatrix.josephUpdate(cov, gain, variance[k]);
            }
            filtered[k] = mean;
            filteredCov[k] = cov;
        }
        double[][] smoothed = new double[n][];
        double[][][] smoothedCov = new double[n][][];
        backward(predicted, predictedCov, filtered, filteredCov, smoothed, smoothedCov);
        return new Passes(filtered, filteredCov, smoothed, smoothedCov, gain);
    }

    /**
     * The smoothed states of other samples, measured at the same times and places with the same variances as those of {@link #run},
     * which must have been called: the gains are the same.
     */
    double[][] again(double[] y, double[] startMean) {
        int n = t.length;
        double[][] predicted = new double[n][];
        double[][] filtered = new double[n][];
        double[] mean = startMean.clone();
        for (int k = 0; k < n; k++) {
            mean = k > 0 ? SmallMatrix.times(transitions[k], mean) : mean;
            predicted[k] = mean;
            mean = gains[k] != null && !Double.isNaN(y[k]) ? corrected(mean, gains[k], y[k] - mean[0]) : mean;
            filtered[k] = mean;
        }
        double[][] smoothed = new double[n][];
        smoothed[n - 1] = filtered[n - 1];
        for (int k = n - 2; k >= 0; k--) {
            smoothed[k] = SmallMatrix.plus(
                    filtered[k], SmallMatrix.times(backs[k], SmallMatrix.minus(smoothed[k + 1], predicted[k + 1])));
        }
        return smoothed;
    }

    private void backward(
            double[][] predicted,
            double[][][] predictedCov,
            double[][] filtered,
            double[][][] filteredCov,
            double[][] smoothed,
            double[][][] smoothedCov) {
        int n = t.length;
        smoothed[n - 1] = filtered[n - 1];
        smoothedCov[n - 1] = filteredCov[n - 1];
        for (int k = n - 2; k >= 0; k--) {
            double[][] c = SmallMatrix.times(
                    SmallMatrix.timesTransposed(filteredCov[k], transitions[k + 1]),
                    SmallMatrix.inverseSymmetric(predictedCov[k + 1]));
            backs[k] = c;
            smoothed[k] = SmallMatrix.plus(
                    filtered[k], SmallMatrix.times(c, SmallMatrix.minus(smoothed[k + 1], predicted[k + 1])));
            double[][] difference = SmallMatrix.plusScaled(smoothedCov[k + 1], predictedCov[k + 1], -1);
            smoothedCov[k] = SmallMatrix.plusScaled(filteredCov[k], SmallMatrix.sandwich(c, difference), 1);
        }
    }

    private static double[] gain(double[][] cov, double variance) {
        double s = cov[0][0] + variance;
        double[] gain = new double[cov.length];
        for (int i = 0; i < gain.length; i++) {
            gain[i] = cov[i][0] / s;
        }
        return gain;
    }

    private static double[] corrected(double[] mean, double[] gain, double innovation) {
        double[] out = mean.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] += gain[i] * innovation;
        }
        return out;
    }
}
