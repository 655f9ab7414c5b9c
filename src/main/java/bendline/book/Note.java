package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * Words at a frame.
 *
 * @param id never changes
 * @param clipId of which clip
 * @param seconds clip time of the frame
 * @param words free text
 * @param drawing what is drawn on the frame, pixels of the upright picture: {@code x,y x,y} for a line, three points for an
 *     angle at the second; empty for nothing
 * @param personId who wrote it; null for whoever keeps the book
 * @param answers the note that it answers, or null
 * @param drillId the drill that it sets or reports on, or null
 * @param madeAt ISO instant
 */
public record Note(
        String id,
        String clipId,
        double seconds,
        String words,
        String drawing,
        @Nullable String personId,
        @Nullable String answers,
        @Nullable String drillId,
        String madeAt) {}
