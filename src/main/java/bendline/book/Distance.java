package bendline.book;

import java.util.Locale;

/**
 * How far a cast went, as measured at the water. The line measures to the clip or to where it came tight, not to the splash.
 *
 * @param metres more than 0, at most 300
 * @param plusMinus 68 %, metres
 * @param how in words
 */
public record Distance(double metres, double plusMinus, String how) {

    /** Sticks four yards apart: the usual distance sticks (common practice). */
    public static final double USUAL_WRAP_M = 3.6576;

    /** Wraps are counted to a half, and each lies a little slack or taut: a hundredth of all (common practice, no source). */
    private static final double WRAP_SHARE = 0.01;

    /** Turns are counted to a quarter, and the spool's diameter falls as it empties: a tenth of all (checked as arithmetic, see tests). */
    private static final double TURN_SHARE = 0.1;

    /** Checks the range. */
    public Distance {
        if (!(metres > 0 && metres <= 300)) {
            throw new IllegalArgumentException("distance " + metres + " m is outside 0 to 300 m");
        }
    }

    /** Turns of line round two sticks. */
    public static Distance wraps(double count, double wrapM) {
        double metres = count * wrapM;
        return new Distance(
                metres,
                Math.hypot(wrapM / 2 / Math.sqrt(12), WRAP_SHARE * metres),
                words("%s wraps of %.4g m", plain(count), wrapM));
    }

    /** Turns of the handle. */
    public static Distance turns(double count, double turnM) {
        double metres = count * turnM;
        return new Distance(
                metres,
                Math.hypot(turnM / 4 / Math.sqrt(12), TURN_SHARE * metres),
                words("%s turns of %.4g m", plain(count), turnM));
    }

    /** Measured in metres. */
    public static Distance metres(double metres, double plusMinus) {
        return new Distance(metres, plusMinus, words("measured in metres, ± %s m", plain(plusMinus)));
    }

    private static String plain(double x) {
        return x == Math.rint(x) ? words("%.0f", x) : words("%s", x);
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
