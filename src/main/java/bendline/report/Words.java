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
        double factor = isShare(m) ? 100 : 1;
        if (!Double.isFinite(m.plusMinus())) {
            return plain(factor * value, 3) + unit(m);
        }
        double plusMinus = factor * m.plusMinus();
        int decimals = decimals(plusMinus);
        return fixed(factor * value, decimals) + " ± " + fixed(plusMinus, decimals) + unit(m);
    }

    /** Another number of the same kind as a measure. */
    static String alike(double value, Measure m) {
        return plain(isShare(m) ? 100 * value : value, 3) + unit(m);
    }

    /** Compressions are shares of the straight length; the charts show them in per cent, so words do too. */
    private static boolean isShare(Measure m) {
        return m.unit().equals("1") && m.id().startsWith("compression");
    }

    /** With a capital at its head. */
    static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
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

    private static String unit(Measure m) {
        return switch (m.unit()) {
            case "1" -> isShare(m) ? "\u00a0%" : "";
            case "deg" -> "°";
            case "deg/s" -> " °/s";
            default -> "\u00a0" + m.unit();
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
