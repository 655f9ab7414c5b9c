package bendline.benchmark;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.DoubleStream;

/**
 * Errors of one kind, pooled.
 *
 * @param values absolute errors, in any order
 */
public record Spread(double[] values) {

    /** Nothing was measured. */
    public static final Spread NONE = new Spread(new double[0]);

    /** Copies the array and sorts the copy; NaNs go. */
    public Spread {
        values = DoubleStream.of(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
    }

    /** How many. */
    public int count() {
        return values.length;
    }

    /** The value below which a share of the errors lies, by linear interpolation; NaN where there are none. */
    public double quantile(double share) {
        if (values.length == 0) {
            return Double.NaN;
        }
        double at = share * (values.length - 1);
        int low = (int) at;
        int high = Math.min(low + 1, values.length - 1);
        return values[low] + (at - low) * (values[high] - values[low]);
    }

    /** Middle value. */
    public double median() {
        return quantile(0.5);
    }

    /** 95th percentile. */
    public double p95() {
        return quantile(0.95);
    }

    /** Mean. */
    public double mean() {
        return DoubleStream.of(values).average().orElse(Double.NaN);
    }

    /** Share of the values above a limit; NaN where there are none. */
    public double shareAbove(double limit) {
        return values.length == 0
                ? Double.NaN
                : (double) DoubleStream.of(values).filter(v -> v > limit).count() / values.length;
    }

    /** Both together. */
    public Spread with(Spread other) {
        double[] all = Arrays.copyOf(values, values.length + other.values.length);
        System.arraycopy(other.values, 0, all, values.length, other.values.length);
        return new Spread(all);
    }

    @Override
    public double[] values() {
        return values.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Spread that && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "median %.2f, 95 %% %.2f (%d)", median(), p95(), count());
    }
}
