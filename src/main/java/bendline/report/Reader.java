package bendline.report;

import java.text.DecimalFormatSymbols;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Whom a page is for: how numbers and dates are written where they live, and whether yards, feet and ounces stand beside the
 * metric units. Only prose goes through here; files for machines never do.
 *
 * <p>The prose is English everywhere, so figures stay Latin, also where the locale would have others.
 *
 * @param locale whose decimal sign and dates are used
 * @param yards whether yards, feet, ounces and pounds are added in brackets
 */
public record Reader(Locale locale, boolean yards) {

    /** Points and metric units only. */
    public static final Reader PLAIN = new Reader(Locale.ROOT, false);

    private static final Pattern POINT = Pattern.compile("(?<=\\d)(?<!\\.\\d{1,9})\\.(?=\\d)(?!\\d+\\.)");

    private static final String NUMBER = "[−+-]?\\d+(?:\\.\\d+)?";

    /** One number, or two with ± or "to" between them, before a unit that has a neighbour in yards and ounces. */
    private static final Pattern QUANTITY = Pattern.compile("(?<![\\w.,])(" + NUMBER
            + ")(?:([ \u00a0](?:±|to)[ \u00a0])(" + NUMBER + "))?[ \u00a0](m/s|m|kg|g)(?![\\w/²³·°])");

    /** From here on a length in metres is a distance on the water, which is told in yards; below it in feet. */
    private static final double DISTANCE_M = 20;

    /**
     * A neighbour of a metric unit.
     *
     * @param name as written
     * @param factor how many of it make one metric unit (exact by definition: the yard of 0.9144 m and the pound of
     *     0.45359237 kg of the agreement of 1959)
     * @param decimals more or fewer than the metric number has
     */
    private record Neighbour(String name, double factor, int decimals) {}

    private static final Neighbour YARDS = new Neighbour("yd", 1 / 0.9144, 0);
    private static final Neighbour FEET = new Neighbour("ft", 1 / 0.3048, -1);
    private static final Neighbour FEET_A_SECOND = new Neighbour("ft/s", 1 / 0.3048, -1);
    private static final Neighbour OUNCES = new Neighbour("oz", 1 / 28.349523125, 1);
    private static final Neighbour POUNDS = new Neighbour("lb", 1 / 0.45359237, 0);

    /** A sentence as this reader writes numbers. */
    String say(String text) {
        return pointed(yards ? QUANTITY.matcher(text).replaceAll(Reader::beside) : text);
    }

    /** The words inside a drawing: only the decimal sign is theirs, since units there share one axis. */
    String drawn(String svg) {
        return Pattern.compile("(?<=>)[^<>]*(?=</(?:text|title|tspan)>)")
                .matcher(svg)
                .replaceAll(m -> java.util.regex.Matcher.quoteReplacement(pointed(m.group())));
    }

    /** A day as this reader writes it. */
    String date(LocalDate day) {
        return locale.equals(Locale.ROOT)
                ? day.toString()
                : DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM)
                        .withLocale(locale)
                        .format(day);
    }

    private String pointed(String text) {
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(locale);
        char sign = symbols.getDecimalSeparator();
        return sign == '.' || symbols.getZeroDigit() != '0'
                ? text
                : POINT.matcher(text).replaceAll(String.valueOf(sign));
    }

    private static String beside(MatchResult m) {
        Neighbour n = neighbour(m.group(4), value(m.group(1)));
        String second = m.group(3) == null ? "" : m.group(2) + converted(m.group(3), n);
        return m.group() + " (" + converted(m.group(1), n) + second + "\u00a0" + n.name() + ")";
    }

    private static Neighbour neighbour(String unit, double value) {
        return switch (unit) {
            case "m" -> Math.abs(value) >= DISTANCE_M ? YARDS : FEET;
            case "m/s" -> FEET_A_SECOND;
            case "kg" -> POUNDS;
            default -> OUNCES;
        };
    }

    private static double value(String number) {
        return Double.parseDouble(number.replace('−', '-'));
    }

    private static String converted(String number, Neighbour n) {
        int point = number.indexOf('.');
        int decimals = Math.max(0, (point < 0 ? 0 : number.length() - point - 1) + n.decimals());
        double value = n.factor() * value(number);
        // What isn't nothing must not become nothing by the coarser unit.
        if (value != 0 && Math.abs(value) < 0.5 * Math.pow(10, -decimals)) {
            decimals++;
        }
        String sign = number.startsWith("+") ? "+" : "";
        return sign + Words.of("%." + decimals + "f", value).replace('-', '−');
    }
}
