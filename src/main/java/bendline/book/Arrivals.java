package bendline.book;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Clips on their way in and what is to be done with them; all of it survives the program. */
public final class Arrivals {

    private final PracticeBook book;

    /** @param book where it is kept */
    public Arrivals(PracticeBook book) {
        this.book = book;
    }

    /** Writes down that an upload has begun. */
    public void begun(Upload upload) {
        book.write(h -> Rows.insert(h, "upload", upload));
    }

    /** An upload by its id. */
    public Optional<Upload> upload(String id) {
        return book.read(h -> h.createQuery("SELECT * FROM upload WHERE id = ?")
                .bind(0, id)
                .mapTo(Upload.class)
                .findOne());
    }

    /** All uploads that are not in the book yet, the oldest first. */
    public List<Upload> uploads() {
        return book.read(h -> Rows.all(h, "upload", "begun_at, id", Upload.class));
    }

    /** Forgets an upload. */
    public void gone(String id) {
        book.execute(h -> h.execute("DELETE FROM upload WHERE id = ?", id));
    }

    /** Asks for a clip to be analysed, again if it was. */
    public void ask(String clipId) {
        book.execute(h -> h.execute(
                "INSERT INTO job (clip_id, state, tries, says, asked_at) VALUES (?, 'waiting', 0, '', ?)"
                        + " ON CONFLICT (clip_id) DO UPDATE SET state = 'waiting', tries = 0, says = ''",
                clipId,
                Instant.now().toString()));
    }

    /** Counts a try before it is made. */
    public void tried(String clipId) {
        book.execute(h -> h.execute("UPDATE job SET tries = tries + 1 WHERE clip_id = ?", clipId));
    }

    /** Writes down how it ended. */
    public void ended(String clipId, boolean well, String says) {
        book.execute(h -> h.execute(
                "UPDATE job SET state = ?, says = ? WHERE clip_id = ?", well ? "done" : "failed", says, clipId));
    }

    /** All jobs in the order in which they were asked for. */
    public List<Job> jobs() {
        return book.read(h -> Rows.all(h, "job", "asked_at, clip_id", Job.class));
    }

    /** The job of a clip. */
    public Optional<Job> job(String clipId) {
        return jobs().stream().filter(j -> j.clipId().equals(clipId)).findFirst();
    }
}
