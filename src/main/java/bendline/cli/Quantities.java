package bendline.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Numbers with units as people write them ({@code 90}, {@code 90g}, {@code 3.2oz}), and what they may have meant where they wrote
 * something that can't be.
 */
final class Quantities {

    private static final Pattern FORM =
            Pattern.compile("\\s*([+-]?\\d+(?:[.]\\d+)?(?:[eE][+-]?\\d+)?)\\s*([a-zA-Z/%]*)\\s*");

    private Quantities() {}

    /** Reads a number and turns it into one unit. */
    private abstract static class Reader implements ITypeConverter<Double> {

        private final String what;
        private final String unit;
        private final Map<String, Double> units;

        Reader(String what, String unit, Map<String, Double> others) {
            this.what = what;
            this.unit = unit;
            this.units = new LinkedHashMap<>(others);
            this.units.put(unit, 1.0);
        }

        @Override
        public Double convert(String text) {
            Matcher m = FORM.matcher(text);
            Double factor = m.matches()
                    ? units.get(m.group(2).isEmpty() ? unit : m.group(2).toLowerCase(Locale.ROOT))
                    : null;
            if (factor == null) {
                throw new TypeConversionException("'" + text + "' is no " + what + "; write a number in " + unit
                        + ", or with one of the units " + String.join(", ", units.keySet()));
            }
            return Double.parseDouble(m.group(1)) * factor;
        }
    }

    /** Grams. */
    static final class Grams extends Reader {
        Grams() {
            super("weight", "g", Map.of("kg", 1000.0, "oz", 28.349523, "lb", 453.59237));
        }
    }

    /** Kilograms of breaking strain. */
    static final class Strength extends Reader {
        Strength() {
            super("strength", "kg", Map.of("lb", 0.45359237, "n", 1 / 9.80665));
        }
    }

    /** Millimetres. */
    static final class Millimetres extends Reader {
        Millimetres() {
            super("thickness", "mm", Map.of("in", 25.4));
        }
    }

    /** Metres. */
    static final class Metres extends Reader {
        Metres() {
            super("length", "m", Map.of("yd", 0.9144, "ft", 0.3048, "cm", 0.01));
        }
    }

    /** Metres a second. */
    static final class Speed extends Reader {
        Speed() {
            super("speed", "m/s", Map.of("km/h", 1 / 3.6, "kmh", 1 / 3.6, "mph", 0.44704, "kn", 0.514444));
        }
    }

    /**
     * Another unit that a number without one may have been in.
     *
     * @param factor to the unit wanted
     * @param unit its name
     */
    private record Other(double factor, String unit) {}

    /** Nobody writes a number that comes out this near to a tenth by chance, in tenths. */
    private static final double ROUND = 1e-3;

    private static final Map<String, List<Other>> OTHERS = Map.of(
            "g", List.of(new Other(1000, "kg"), new Other(28.349523, "oz")),
            "m/s", List.of(new Other(1 / 3.6, "km/h"), new Other(0.514444, "kn")),
            "mm", List.of(new Other(0.01, "hundredths of a millimetre"), new Other(1000, "m"), new Other(25.4, "in")),
            "kg", List.of(new Other(0.45359237, "lb"), new Other(1 / 9.80665, "N"), new Other(0.001, "g")),
            "m", List.of(new Other(0.3048, "ft"), new Other(0.01, "cm"), new Other(0.001, "mm")));

    /**
     * What is wrong with a number, one sentence; null if nothing.
     *
     * @param what with its article, a capital at the head
     */
    static @Nullable String complaint(String what, @Nullable Double value, double min, double max, String unit) {
        if (value == null || (value >= min && value <= max)) {
            return null;
        }
        String said =
                what + " " + plain(value) + " " + unit + " is outside " + plain(min) + " to " + plain(max) + " " + unit;
        for (Other other : OTHERS.getOrDefault(unit, List.of())) {
            double meant = value * other.factor();
            if (meant >= min && meant <= max && meant > 0) {
                return said + ". Did you mean " + plain(value) + " " + other.unit() + ", which is " + plain(meant) + " "
                        + unit + "?";
            }
        }
        for (Other other : OTHERS.getOrDefault(unit, List.of())) {
            double written = value / other.factor();
            boolean round = Math.abs(10 * written - Math.rint(10 * written)) < ROUND;
            if (round && written >= min && written <= max) {
                return said + ". Did you mean " + plain(written) + " " + unit + "?";
            }
        }
        Double slipped = slipped(value, min, max);
        return slipped == null ? said + "." : said + ". Did you mean " + plain(slipped) + " " + unit + "?";
    }

    /** A number a thousand times too large, as grams are that were called kilograms. */
    private static @Nullable Double slipped(double value, double min, double max) {
        double thousandth = value / 1000;
        return thousandth >= min && thousandth <= max && thousandth > 0 ? thousandth : null;
    }

    static String plain(double value) {
        double rounded = Double.parseDouble(String.format(Locale.ROOT, "%.3g", value));
        return rounded == Math.rint(rounded) && Math.abs(rounded) < 1e7
                ? String.format(Locale.ROOT, "%.0f", rounded)
                : Double.toString(rounded);
    }
}
