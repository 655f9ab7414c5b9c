package bendline.rod;

/** Refuses numbers that no rod has. */
final class Ranges {

    private Ranges() {}

    static void check(String what, double value, double min, double max, String unit) {
        if (!(value >= min && value <= max)) {
            throw new IllegalArgumentException(
                    (what + " " + value + " " + unit).strip() + " is outside " + min + " to " + max + " " + unit);
        }
    }
}
