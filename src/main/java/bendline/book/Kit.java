package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * What a cast was made with. Never changed once written down, so that old casts stay true; a change of anything is a new kit.
 *
 * @param id never changes
 * @param name for choosing it; unique
 * @param rod free text
 * @param rodLengthM butt cap to tip, metres
 * @param freeLengthM upper hand to tip, metres
 * @param dropM tip to rig before the cast, metres
 * @param reel free text
 * @param line free text
 * @param leader free text
 * @param rig free text
 * @param rigEmptyG without bait, grams
 * @param rigLoadedG as cast, grams
 * @param stem free text
 * @param turnM line that one turn of the handle brings in, metres
 * @param notes free text
 */
public record Kit(
        String id,
        String name,
        @Nullable String rod,
        @Nullable Double rodLengthM,
        @Nullable Double freeLengthM,
        @Nullable Double dropM,
        @Nullable String reel,
        @Nullable String line,
        @Nullable String leader,
        @Nullable String rig,
        @Nullable Double rigEmptyG,
        @Nullable Double rigLoadedG,
        @Nullable String stem,
        @Nullable Double turnM,
        String notes) {

    /** Whether nothing but the id differs. */
    boolean sameAs(Kit other) {
        return withId("").equals(other.withId(""));
    }

    private Kit withId(String other) {
        return new Kit(
                other,
                name,
                rod,
                rodLengthM,
                freeLengthM,
                dropM,
                reel,
                line,
                leader,
                rig,
                rigEmptyG,
                rigLoadedG,
                stem,
                turnM,
                notes);
    }
}
