package bendline.web;

import bendline.book.Clip;
import bendline.book.ClipSetup;
import bendline.book.Entry;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import bendline.book.Throw;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The practice book as the pages look at it: a clip with what is known of it, and where what is made of it lies. */
final class Desk {

    private final PracticeBook book;
    private final FrameShelf frames;

    /** @param mostPicturesBytes what the pictures to step through may take altogether */
    Desk(PracticeBook book, long mostPicturesBytes) {
        this.book = book;
        this.frames = new FrameShelf(book.file("cache/frames"), mostPicturesBytes);
    }

    Optional<Clip> clip(String id) {
        return book.clips().stream().filter(c -> c.id().equals(id)).findFirst();
    }

    List<Entry> entries(Clip clip) {
        return book.entries(Selection.ALL).stream()
                .filter(e -> clip.equals(e.clip()))
                .toList();
    }

    boolean analysed(String clipId) {
        return book.analyses().stream().anyMatch(a -> a.clipId().equals(clipId));
    }

    /** The newest report of a clip. */
    Optional<Path> report(Clip clip) {
        return book.analyses().stream()
                .filter(a -> a.clipId().equals(clip.id()))
                .reduce((older, newer) -> newer)
                .map(a -> book.file(a.folder()))
                .filter(Files::isDirectory);
    }

    /** The pictures of all clips. */
    FrameShelf frames() {
        return frames;
    }

    Path followed(String clipId) {
        return book.file("cache/followed").resolve(clipId + ".json");
    }

    Order order(Clip clip) {
        return new Order(
                clip.name(),
                book.file(clip.file()),
                followed(clip.id()),
                book.file(book.placeForAnalysis()),
                frames.of(clip.id()),
                ClipSetup.of(book, clip, entries(clip)));
    }

    /** A report is in its place: the book names it, and the casts that it found. */
    void written(Clip clip, String folder, int casts, String program) {
        book.analysed(clip, program, "analyses/" + folder, casts);
        List<Entry> entries = entries(clip);
        for (int i = entries.size() + 1; i <= casts && !entries.isEmpty(); i++) {
            Throw first = entries.get(0).cast();
            book.add(plain(first.sessionId(), clip.id(), i, first.kitId(), first.techniqueId()));
        }
    }

    /** A cast of which nothing was measured. */
    static Throw plain(
            String sessionId, String clipId, int number, @Nullable String kitId, @Nullable String techniqueId) {
        return new Throw("", sessionId, 0, clipId, number, kitId, techniqueId, null, null, null, null, null, "", "");
    }
}
