package bendline.simulate;

import java.util.Locale;

/** Checks of settings: which one, its value, what is allowed. */
final class Ranges {

    private Ranges() {}

    /**
     * The value itself if it lies within the limits.
     *
     * @throws IllegalArgumentException naming the setting, its value and the limits
     */
    static double check(String name, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT, "%s is %s, allowed is %s to %s; change it in the scenario", name, value, least, most));
        }
        return value;
    }
}
