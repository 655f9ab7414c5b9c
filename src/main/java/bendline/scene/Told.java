package bendline.scene;

import org.jspecify.annotations.Nullable;

/** Whether a number that was told can be; apart from the records that are told, so that none waits for another to be loaded. */
final class Told {

    private Told() {}

    static void check(String what, @Nullable Double value, double min, double max, String unit) {
        if (value != null && !(value >= min && value <= max)) {
            throw new IllegalArgumentException(
                    (what + " " + value + " " + unit).strip() + " is outside " + min + " to " + max + " " + unit);
        }
    }
}
