package bendline.book;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What people say about clips: corrections, notes, answers to drills. */
public final class Reviews {

    private final PracticeBook book;

    /** @param book where it is kept */
    public Reviews(PracticeBook book) {
        this.book = book;
    }

    /** Writes down a correction. */
    public void add(Correction correction) {
        book.write(h -> Rows.insert(h, "correction", correction));
    }

    /** All of a clip, the oldest first, those taken back too. */
    public List<Correction> corrections(String clipId) {
        return book.read(h -> h.createQuery("SELECT * FROM correction WHERE clip_id = ? ORDER BY made_at, id")
                .bind(0, clipId)
                .mapTo(Correction.class)
                .list());
    }

    /** Takes a correction back; it stays in the book. */
    public void undo(String clipId, String id) {
        book.execute(h -> h.execute(
                "UPDATE correction SET undone_at = ? WHERE id = ? AND clip_id = ? AND undone_at IS NULL",
                Instant.now().toString(),
                id,
                clipId));
    }

    /** Writes down a note and the drill that it sets, if any: both or neither. */
    public void add(Note note, @Nullable Drill drill) {
        book.write(h -> {
            if (drill != null) {
                Rows.insert(h, "drill", drill);
            }
            return Rows.insert(h, "note", note);
        });
    }

    /** All of a clip, by the moment they speak of. */
    public List<Note> notes(String clipId) {
        return book.read(h -> h.createQuery("SELECT * FROM note WHERE clip_id = ? ORDER BY seconds, made_at, id")
                .bind(0, clipId)
                .mapTo(Note.class)
                .list());
    }

    /** Writes down that one drill is done. */
    public void done(String drillId, String day) {
        book.execute(h -> h.execute("UPDATE drill SET done_on = ? WHERE id = ? AND done_on IS NULL", day, drillId));
    }
}
