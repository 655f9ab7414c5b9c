package bendline.web;

import bendline.book.Clip;
import bendline.book.Entry;
import bendline.book.Kit;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import bendline.book.Session;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** More casts in a book, written down beside the running server; their analyses are copies, which saves analysing others. */
final class Copies {

    private final PracticeBook book;
    private final String clip;
    private final Entry first;

    /** @param clip one that was analysed */
    Copies(Path folder, String clip) {
        this.book = PracticeBook.open(folder);
        this.clip = clip;
        this.first = book.entries(Selection.ALL).stream()
                .filter(e -> e.clip() != null && e.clip().id().equals(clip))
                .findFirst()
                .orElseThrow();
    }

    /** One more cast in the session of the first. */
    void add() throws IOException {
        add(first.session().id(), null);
    }

    /** One more cast of another day, with its wind and rod. */
    void add(String day, double windMps, String rod) throws IOException {
        Session session = book.session(new Session(day, day, "2026-06-01", null, null, null, windMps, 180.0, null, ""));
        Kit kit =
                book.kit(new Kit(rod, rod, rod, null, null, null, null, null, null, null, null, null, null, null, ""));
        add(session.id(), kit.id());
    }

    private void add(String session, @Nullable String kit) throws IOException {
        int n = book.clips().size();
        Clip kept = book.keep(Files.write(book.folder().resolve("other" + n + ".mp4"), new byte[] {1, 2, (byte) n}));
        book.add(Desk.plain(session, kept.id(), 1, kit, null));
        String place = book.placeForAnalysis();
        copy(book.file(first.analysis().folder()), book.file(place));
        copy(book.file("cache/frames/" + clip), book.file("cache/frames/" + kept.id()));
        book.analysed(kept, "copied", place, 1);
        Files.copy(book.file("cache/followed/" + clip + ".json"), book.file("cache/followed/" + kept.id() + ".json"));
    }

    /** From now on the casts of the clip's session are somebody's. */
    void belongsTo(String name) {
        String id = book.people().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow()
                .id();
        Session s = first.session();
        book.session(new Session(s.id(), s.name(), s.day(), id, null, null, null, null, null, ""));
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> walk = Files.walk(from)) {
            for (Path p : walk.toList()) {
                Files.copy(p, to.resolve(from.relativize(p).toString()));
            }
        }
    }
}
