package bendline.report;

import bendline.stroke.Measure;
import java.util.Locale;

/** Numbers in sentences. */
final class Words {

    private Words() {}

    /** {@link String#format} that does not depend on where the program runs. */
    static String of(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    /** A value with its uncertainty and unit, with as many digits as the uncertainty is worth. */
    static String measured(Measure m) {
        Double value = m.value();
        if (value == null) {
            return "cannot tell";
        }
        String unit = unit(m.unit());
        if (!Double.isFinite(m.plusMinus())) {
            return plain(value, 3) + unit;
        }
        int decimals = decimals(m.plusMinus());
        return fixed(value, decimals) + " ± " + fixed(m.plusMinus(), decimals) + unit;
    }

    /** A number in the unit of a measure. */
    static String inUnit(double value, String unit) {
        return plain(value, 3) + unit(unit);
    }

    /** Decimals that show an uncertainty with two digits where its first is 1, else with one. */
    static int decimals(double plusMinus) {
        if (!(plusMinus > 0)) {
            return 3;
        }
        int magnitude = (int) Math.floor(Math.log10(plusMinus));
        boolean startsWithOne = plusMinus / Math.pow(10, magnitude) < 1.95;
        return Math.max(0, Math.min(4, -magnitude + (startsWithOne ? 1 : 0)));
    }

    private static String unit(String unit) {
        return switch (unit) {
            case "1" -> "";
            case "deg" -> "°";
            case "deg/s" -> " °/s";
            default -> "\u00a0" + unit;
        };
    }

    private static String fixed(double value, int decimals) {
        return minus(of("%." + decimals + "f", value));
    }

    private static String plain(double value, int digits) {
        return minus(new java.math.BigDecimal(value)
                .round(new java.math.MathContext(digits))
                .stripTrailingZeros()
                .toPlainString());
    }

    private static String minus(String number) {
        return number.replace('-', '−');
    }
}
