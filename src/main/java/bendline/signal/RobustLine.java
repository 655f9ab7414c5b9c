package bendline.signal;

import java.util.Arrays;

/**
 * A straight line through samples some of which may be wrong.
 *
 * @param intercept value at abscissa 0
 * @param slope per unit of the abscissa
 * @param slopeSd 68 % uncertainty of the slope, from the scatter of the samples that count
 * @param scatter robust standard deviation of the residuals, samples' unit
 */
public record RobustLine(double intercept, double slope, double slopeSd, double scatter) {

    private static final double HUBER = 1.345;
    private static final int ROUNDS = 30;

    /**
     * Starts from the median of pairwise slopes (Theil and Sen) and refines by Huber's weights.
     *
     * @param x at least two different abscissae
     * @param y samples
     */
    public static RobustLine fit(double[] x, double[] y) {
        double slope = medianSlope(x, y);
        double[] rest = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            rest[i] = y[i] - slope * x[i];
        }
        double intercept = median(rest);
        double scatter = scatter(x, y, intercept, slope);
        double sxx = 0;
        for (int round = 0; round < ROUNDS && scatter > 0; round++) {
            double sw = 0;
            double sx = 0;
            double sy = 0;
            for (int i = 0; i < x.length; i++) {
                double w = weight(y[i] - intercept - slope * x[i], scatter);
                sw += w;
                sx += w * x[i];
                sy += w * y[i];
            }
            sxx = 0;
            double sxy = 0;
            for (int i = 0; i < x.length; i++) {
                double w = weight(y[i] - intercept - slope * x[i], scatter);
                sxx += w * (x[i] - sx / sw) * (x[i] - sx / sw);
                sxy += w * (x[i] - sx / sw) * (y[i] - sy / sw);
            }
            slope = sxy / sxx;
            intercept = sy / sw - slope * sx / sw;
            scatter = scatter(x, y, intercept, slope);
        }
        return new RobustLine(intercept, slope, sxx > 0 ? scatter / Math.sqrt(sxx) : 0, scatter);
    }

    /** The line's value. */
    public double at(double x) {
        return intercept + slope * x;
    }

    private static double weight(double residual, double scatter) {
        double u = Math.abs(residual) / (HUBER * scatter);
        return u <= 1 ? 1 : 1 / u;
    }

    private static double scatter(double[] x, double[] y, double intercept, double slope) {
        double[] r = new double[x.length];
        for (int i = 0; i < r.length; i++) {
            r[i] = Math.abs(y[i] - intercept - slope * x[i]);
        }
        return Scatter.SD_OVER_MEDIAN * median(r);
    }

    private static double medianSlope(double[] x, double[] y) {
        double[] slopes = new double[x.length * (x.length - 1) / 2];
        int n = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < i; j++) {
                if (x[i] != x[j]) {
                    slopes[n++] = (y[i] - y[j]) / (x[i] - x[j]);
                }
            }
        }
        if (n == 0) {
            throw new IllegalArgumentException("a line needs two different abscissae");
        }
        return median(Arrays.copyOf(slopes, n));
    }

    /** Middle value; the mean of the two middle ones where their number is even. */
    static double median(double[] values) {
        double[] s = values.clone();
        Arrays.sort(s);
        int n = s.length;
        return n % 2 == 1 ? s[n / 2] : 0.5 * (s[n / 2 - 1] + s[n / 2]);
    }
}
