package bendline.flight;

import java.util.Locale;

/** Whether a number can be what it is said to be. */
final class Amounts {

    private Amounts() {}

    static void check(String what, double value, double min, double max, String unit) {
        if (!(value >= min && value <= max)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT, "%s %.4g %s is outside %.4g to %.4g %s", what, value, unit, min, max, unit));
        }
    }
}
