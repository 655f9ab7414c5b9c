package bendline.book;

import bendline.scene.Mark;
import bendline.scene.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What the book tells the analysis of a clip: the kit of its casts, and what people corrected. */
public final class ClipSetup {

    private ClipSetup() {}

    /**
     * Everything known of a clip; a cast whose kit isn't written down is analysed without.
     *
     * @param entries the casts of the clip
     */
    public static Setup of(PracticeBook book, Clip clip, List<Entry> entries) {
        return entries.stream()
                .map(Entry::kit)
                .filter(Objects::nonNull)
                .findFirst()
                .map(ClipSetup::of)
                .orElse(Setup.NONE)
                .withMarks(marks(new Reviews(book).corrections(clip.id())));
    }

    private static Setup of(Kit k) {
        return new Setup(k.rodLengthM(), k.freeLengthM(), k.dropM(), kilograms(k.rigLoadedG()), null, null, List.of());
    }

    /** What counts of the corrections: one mark a frame for parts, later ones over earlier ones; then moments as they were made. */
    static List<Mark> marks(List<Correction> corrections) {
        Map<Double, Mark> parts = new TreeMap<>();
        List<Mark> moments = new ArrayList<>();
        for (Correction c : corrections) {
            if (c.undoneAt() == null && c.ofMoment()) {
                moments.add(c.mark());
            } else if (c.undoneAt() == null) {
                parts.merge(c.seconds(), c.mark(), Mark::and);
            }
        }
        List<Mark> out = new ArrayList<>(parts.values());
        out.addAll(moments);
        return out;
    }

    private static @Nullable Double kilograms(@Nullable Double grams) {
        return grams == null ? null : grams / 1000;
    }
}
