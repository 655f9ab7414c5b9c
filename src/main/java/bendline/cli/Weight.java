package bendline.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A weight as a user writes it, with its unit: rods are sold by the pound, rigs by the gram, and a number alone would be
 * misread.
 *
 * @param kg kilograms
 */
record Weight(double kg) {

    private static final Map<String, Double> UNITS =
            Map.of("kg", 1.0, "g", 0.001, "lb", 0.45359237, "lbs", 0.45359237, "oz", 0.028349523125);

    /** What a rod is ever bent by on purpose, kilograms. */
    private static final double LEAST_KG = 0.1;

    private static final double MOST_KG = 5;

    /** Reads {@code 1.2kg}, {@code 2.75lb}, {@code 80g}, {@code 3oz}. */
    static final class Converter implements ITypeConverter<Weight> {

        private static final Pattern FORM = Pattern.compile("\\s*(\\d+(?:\\.\\d+)?)\\s*([a-zA-Z]*)\\s*");

        @Override
        public Weight convert(String text) {
            Matcher m = FORM.matcher(text);
            if (!m.matches()) {
                throw new TypeConversionException(
                        "'" + text + "' is no weight; write a number with its unit, for example 2.75lb or 1.25kg");
            }
            String unit = m.group(2).toLowerCase(Locale.ROOT);
            if (!UNITS.containsKey(unit)) {
                throw new TypeConversionException(
                        "'" + text + "' has no unit that is known (did you mean " + likely(m.group(1)) + "?)");
            }
            return new Weight(Double.parseDouble(m.group(1)) * UNITS.get(unit));
        }

        /** The number with each unit with which it is a weight that a rod is bent by. */
        private static String likely(String number) {
            double value = Double.parseDouble(number);
            List<String> all = List.of("lb", "kg", "oz", "g");
            List<String> fit = all.stream()
                    .filter(u -> value * UNITS.get(u) >= LEAST_KG && value * UNITS.get(u) <= MOST_KG)
                    .toList();
            return (fit.isEmpty() ? all : fit).stream().map(u -> number + u).collect(Collectors.joining(" or "));
        }
    }
}
