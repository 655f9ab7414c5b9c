package bendline.book;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * Everything a user keeps, in one folder. Several programs may have it open at once; each write is a transaction that is on
 * the disk when the call returns. Safe to use from several threads.
 */
public final class PracticeBook {

    static final String DATABASE = "book.sqlite";

    private static final int PATIENCE_MILLIS = 20_000;

    private final Path folder;
    private final SQLiteDataSource data;
    private final Jdbi jdbi;

    private PracticeBook(Path folder, SQLiteDataSource data) {
        this.folder = folder;
        this.data = data;
        this.jdbi = Jdbi.create(data);
        Rows.register(jdbi);
    }

    /**
     * Opens a book that is there.
     *
     * @throws BookException with one sentence for the user
     */
    public static PracticeBook open(Path folder) {
        if (!Schema.isBook(folder)) {
            throw new BookException("There is no practice book in " + folder
                    + "; begin one by adding a cast, for example book add CLIP, or name another with --book.");
        }
        return at(folder);
    }

    /** Opens a book, or begins one where there is none. */
    public static PracticeBook openOrBegin(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new BookException("A practice book can't be kept in " + folder + "; name another with --book.", e);
        }
        return at(folder);
    }

    private static PracticeBook at(Path folder) {
        Path book = folder.toAbsolutePath().normalize();
        SQLiteDataSource data = source(book.resolve(DATABASE));
        Schema.upgrade(data, book);
        return new PracticeBook(book, data);
    }

    /** How every connection is made: foreign keys held, written through to the disk, patient with other programs. */
    static SQLiteDataSource source(Path file) {
        SQLiteConfig config = new SQLiteConfig();
        config.enforceForeignKeys(true);
        config.setBusyTimeout(PATIENCE_MILLIS);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        SQLiteDataSource data = new SQLiteDataSource(config);
        data.setUrl("jdbc:sqlite:" + file);
        return data;
    }

    /** Where it lies. */
    public Path folder() {
        return folder;
    }

    /** A file that the book names, where it lies now. */
    public Path file(String relative) {
        return folder.resolve(relative);
    }

    /** What happens in here holds altogether or never happened. */
    <T> T write(HandleCallback<T, SQLException> work) {
        try {
            return jdbi.inTransaction(work);
        } catch (JdbiException | SQLException e) {
            throw Trouble.with(folder, e);
        }
    }

    <T> T read(HandleCallback<T, SQLException> work) {
        try {
            return jdbi.withHandle(work);
        } catch (JdbiException | SQLException e) {
            throw Trouble.with(folder, e);
        }
    }

    /** Casts in the order they were made. */
    public List<Entry> entries(Selection which) {
        return read(h -> Rows.entries(h, which));
    }

    /**
     * A cast by its name.
     *
     * @param name session and number, for example {@code 2026-05-03/4}
     * @throws BookException where there is none
     */
    public Entry entry(String name) {
        return entries(Selection.ALL).stream()
                .filter(e -> e.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new BookException(
                        "The book has no cast " + name + "; book list shows them, for example 2026-05-03/4."));
    }

    /** Everything of a kind, by name or day. */
    public List<Session> sessions() {
        return read(h -> Rows.all(h, "session", "day, name", Session.class));
    }

    /** Everybody. */
    public List<Person> people() {
        return read(h -> Rows.all(h, "person", "name", Person.class));
    }

    /** All kit. */
    public List<Kit> kit() {
        return read(h -> Rows.all(h, "kit", "name", Kit.class));
    }

    /** All ways of casting tried. */
    public List<Technique> techniques() {
        return read(h -> Rows.all(h, "technique", "name", Technique.class));
    }

    /** All drills, open ones first. */
    public List<Drill> drills() {
        return read(h -> Rows.all(h, "drill", "done_on IS NOT NULL, set_on, what", Drill.class));
    }

    /** All targets. */
    public List<Target> targets() {
        return read(h -> Rows.all(h, "target", "set_on, measure", Target.class));
    }

    /** All clips. */
    public List<Clip> clips() {
        return read(h -> Rows.all(h, "clip", "name", Clip.class));
    }

    /** Every analysis, the oldest first. */
    public List<Analysis> analyses() {
        return read(h -> Rows.all(h, "analysis", "made_at, id", Analysis.class));
    }

    /** Writes down a person, or finds the one of that name. */
    public Person person(Person wanted) {
        return write(h ->
                Rows.named(h, "person", wanted.name(), Person.class).orElseGet(() -> Rows.insert(h, "person", wanted)));
    }

    /** Writes down a technique, or finds the one of that name; words given replace those that were there. */
    public Technique technique(Technique wanted) {
        return write(h -> {
            var there = Rows.named(h, "technique", wanted.name(), Technique.class);
            if (there.isEmpty()) {
                return Rows.insert(h, "technique", wanted);
            }
            if (!wanted.what().isEmpty()) {
                h.createUpdate("UPDATE technique SET what = :what WHERE name = :name")
                        .bindMethods(wanted)
                        .execute();
            }
            return Rows.named(h, "technique", wanted.name(), Technique.class).orElseThrow();
        });
    }

    /**
     * Writes down kit.
     *
     * @throws BookException where other kit has that name
     */
    public Kit kit(Kit wanted) {
        return write(h -> {
            var there = Rows.named(h, "kit", wanted.name(), Kit.class);
            if (there.isPresent() && !there.get().sameAs(wanted)) {
                throw new BookException("There is other kit named " + wanted.name()
                        + " in the book, and casts made with it must stay true; give this one a name of its own.");
            }
            return there.orElseGet(() -> Rows.insert(h, "kit", wanted));
        });
    }

    /** Writes down a session, or changes what is given of the one of that name. */
    public Session session(Session wanted) {
        return write(h -> Rows.session(h, wanted));
    }

    /** Writes down a drill. */
    public Drill drill(Drill wanted) {
        return write(h -> Rows.insert(h, "drill", wanted));
    }

    /** Writes down that drills with these words are done. */
    public int drillDone(String what, String day) {
        return write(h -> h.createUpdate("UPDATE drill SET done_on = :day WHERE what = :what AND done_on IS NULL")
                .bind("day", day)
                .bind("what", what)
                .execute());
    }

    /** Writes down a target. */
    public Target target(Target wanted) {
        return write(h -> Rows.insert(h, "target", wanted));
    }

    /**
     * Takes a copy of a clip into the book; one that is there already is found again.
     *
     * @throws BookException where that fails; nothing is written down then
     */
    public Clip keep(Path clip) {
        Clip kept = new ClipShelf(folder).keep(clip);
        return write(h -> Rows.clip(h, kept));
    }

    /** Whether a clip is where the book put it. */
    public boolean has(Clip clip) {
        return new ClipShelf(folder).has(clip);
    }

    /**
     * Adds a cast at the end of its session.
     *
     * @param cast its id, number and time are given by the book
     */
    public Throw add(Throw cast) {
        return write(h -> {
            int number = h.createQuery("SELECT coalesce(max(number), 0) + 1 FROM throw WHERE session_id = ?")
                    .bind(0, cast.sessionId())
                    .mapTo(Integer.class)
                    .one();
            return Rows.insert(h, "throw", numbered(cast, number));
        });
    }

    private static Throw numbered(Throw c, int number) {
        return new Throw(
                UUID.randomUUID().toString(),
                c.sessionId(),
                number,
                c.clipId(),
                c.clipCast(),
                c.kitId(),
                c.techniqueId(),
                c.distanceM(),
                c.distanceHow(),
                c.distanceSdM(),
                c.hitClip(),
                c.baitOn(),
                c.notes(),
                Instant.now().toString());
    }

    /** Writes down what is known better now of a cast: everything but where it belongs and what shows it. */
    public void change(Throw cast) {
        write(h -> h.createUpdate(
                        "UPDATE throw SET kit_id = :kitId, technique_id = :techniqueId, distance_m = :distanceM,"
                                + " distance_how = :distanceHow, distance_sd_m = :distanceSdM, hit_clip = :hitClip,"
                                + " bait_on = :baitOn, notes = :notes WHERE id = :id")
                .bindMethods(cast)
                .execute());
    }

    /** A new place for an analysis, outside which nothing changes until {@link #analysed} names it. */
    public String placeForAnalysis() {
        return "analyses/" + UUID.randomUUID();
    }

    /** Writes down an analysis whose files are in their place; those before it stay. */
    public Analysis analysed(Clip clip, String program, String place, int casts) {
        return write(h -> Rows.insert(
                h,
                "analysis",
                new Analysis(
                        UUID.randomUUID().toString(), clip.id(), Instant.now().toString(), program, place, casts)));
    }

    /** Copies the database, without clips, to a file that isn't there yet; null for one in the folder {@code backups}. */
    public Path backup(@org.jspecify.annotations.Nullable Path to) {
        if (to != null && Files.exists(to)) {
            throw new BookException(to + " is already there; name another file.");
        }
        try {
            return to == null ? Backups.copy(data, folder, "by-hand") : Backups.copyTo(data, to.toAbsolutePath());
        } catch (IOException | SQLException e) {
            throw Trouble.with(folder, e);
        }
    }

    /** Everything as one archive. */
    public void export(Path archive) {
        new ArchiveWriter(this).write(archive);
    }

    /** Takes in everything of an archive. */
    public ArchiveReader.Taken importing(Path archive) {
        return new ArchiveReader(this).read(archive);
    }

    /** Looks after files and rows. */
    public BookCheck check() {
        return new BookCheck(this);
    }

    void execute(java.util.function.Consumer<Handle> work) {
        write(h -> {
            work.accept(h);
            return 0;
        });
    }
}
