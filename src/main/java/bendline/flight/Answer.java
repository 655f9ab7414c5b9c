package bendline.flight;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A number that comes out of many drawn flights, with the interval that holds the middle 68 % of them.
 *
 * @param value their median, or null where it can't be told
 * @param low 16 % lie under it
 * @param high 16 % lie over it
 * @param unit SI or deg; "1" for a ratio
 * @param basis what it rests on, or why it can't be told
 */
public record Answer(@Nullable Double value, double low, double high, String unit, String basis) {

    private static final double LOW = 0.16;
    private static final double HIGH = 0.84;

    /** Of draws; those that are not finite are left out. */
    public static Answer of(double[] draws, String unit, String basis) {
        double[] s = Arrays.stream(draws).filter(Double::isFinite).sorted().toArray();
        return s.length < 3
                ? unknown(unit, "too few of the drawn flights have it")
                : new Answer(quantile(s, 0.5), quantile(s, LOW), quantile(s, HIGH), unit, basis);
    }

    /** What can't be told. */
    public static Answer unknown(String unit, String why) {
        return new Answer(null, Double.NaN, Double.NaN, unit, why);
    }

    /** Whether it is told. */
    public boolean known() {
        return value != null;
    }

    /** Half the width of the interval. */
    public double plusMinus() {
        return 0.5 * (high - low);
    }

    private static double quantile(double[] sorted, double q) {
        double at = q * (sorted.length - 1);
        int i = (int) at;
        return i + 1 < sorted.length ? sorted[i] + (at - i) * (sorted[i + 1] - sorted[i]) : sorted[i];
    }
}
