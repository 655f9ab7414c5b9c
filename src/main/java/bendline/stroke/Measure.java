package bendline.stroke;

import org.jspecify.annotations.Nullable;

/**
 * One number about a stroke.
 *
 * @param id name in files, lowerCamelCase without unit
 * @param label words for people
 * @param unit SI unit or deg, g, mm at the edge; "1" for a ratio
 * @param value the number in that unit, or null where it cannot be told
 * @param plusMinus 68 % uncertainty in the same unit; NaN where it cannot be told
 * @param basis what it rests on, or why it cannot be told
 */
public record Measure(
        String id, String label, String unit, @Nullable Double value, double plusMinus, String basis) {

    /** A measure that cannot be told. */
    public static Measure unknown(String id, String label, String unit, String why) {
        return new Measure(id, label, unit, null, Double.NaN, why);
    }
}
