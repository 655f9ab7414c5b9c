package bendline.signal;

import java.util.Arrays;

/** How far samples stray from a smooth course, told from the samples alone. */
public final class Scatter {

    /** A normal deviate's standard deviation over its median size: 1/Φ⁻¹(3/4). */
    public static final double SD_OVER_MEDIAN = 1.482_602_2;

    /** Tukey's limit for strays, standard deviations, at which 95 % of a normal scatter's efficiency is kept. */
    public static final double BIWEIGHT = 4.685;

    /** Standard deviation of a third difference of independent samples: √(1 + 9 + 9 + 1). */
    private static final double OF_THIRD_DIFFERENCE = Math.sqrt(20);

    private static final int FEWEST = 8;

    private Scatter() {}

    /**
     * The standard deviation of evenly spaced samples about a course that is a parabola over any four of them, {@code stride}
     * apart, by the median of third differences, so that a few strays or jerks do not count. Errors that stay alike from sample
     * to sample are only met by strides longer than they last.
     *
     * @param y samples, NaN where there is none
     * @param stride in samples, at least 1
     * @return in the unit of the samples; NaN with too few runs of four
     */
    public static double of(double[] y, int stride) {
        double[] d = new double[Math.max(0, y.length - 3 * stride)];
        for (int i = 0; i < d.length; i++) {
            d[i] = Math.abs(y[i + 3 * stride] - 3 * y[i + 2 * stride] + 3 * y[i + stride] - y[i]);
        }
        double[] s = Arrays.stream(d).filter(Double::isFinite).sorted().toArray();
        if (s.length < FEWEST) {
            return Double.NaN;
        }
        return SD_OVER_MEDIAN * 0.5 * (s[(s.length - 1) / 2] + s[s.length / 2]) / OF_THIRD_DIFFERENCE;
    }
}
