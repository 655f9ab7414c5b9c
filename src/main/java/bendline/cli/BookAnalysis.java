package bendline.cli;

import bendline.analysis.Analyser;
import bendline.analysis.ClipAnalysis;
import bendline.book.Clip;
import bendline.book.Entry;
import bendline.book.Kit;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import bendline.book.Throw;
import bendline.footage.Footage;
import bendline.footage.FootageException;
import bendline.report.CastFolder;
import bendline.scene.Setup;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Analyses clips of the book with what their kit says; what was found before stays. */
final class BookAnalysis {

    private final PracticeBook book;
    private final TalkOptions talk;
    private final FaceOptions faces;
    private final PrintWriter out;

    BookAnalysis(PracticeBook book, TalkOptions talk, FaceOptions faces, PrintWriter out) {
        this.book = book;
        this.talk = talk;
        this.faces = faces;
        this.out = out;
    }

    /** The version that an analysis is written down under. */
    static String program() {
        String version = Main.class.getPackage().getImplementationVersion();
        return version == null ? "not from a jar" : version;
    }

    /** Analyses each; one that can't be used is told and left out. */
    int analyse(List<Clip> clips) throws IOException {
        int failed = 0;
        for (Clip clip : clips) {
            if (!book.has(clip)) {
                say("Missing: " + clip.name() + "; book check --look-in FOLDER finds it again.");
                failed++;
                continue;
            }
            try {
                one(clip);
            } catch (FootageException e) {
                say(e.getMessage());
                failed++;
            }
        }
        return failed;
    }

    private void one(Clip clip) throws IOException {
        List<Entry> entries = book.entries(Selection.ALL).stream()
                .filter(e -> clip.equals(e.clip()))
                .toList();
        try (Bars bars = talk.bars()) {
            ClipAnalysis analysis = new Analyser().analyse(Footage.open(book.file(clip.file())), setup(entries), bars);
            String place = book.placeForAnalysis();
            new CastFolder().write(analysis, book.file(place), faces.of(analysis, bars), bars);
            int casts = analysis.casts().size();
            book.analysed(clip, program(), place, casts);
            for (int i = entries.size() + 1; i <= casts && !entries.isEmpty(); i++) {
                Throw more = book.add(further(entries.get(0).cast(), i));
                say("Another cast in " + clip.name() + ": number " + more.number() + " of its session");
            }
            bars.close();
            say("Analysed " + clip.name() + ": " + casts + (casts == 1 ? " cast, " : " casts, ")
                    + book.file(place).resolve("report.html"));
        }
    }

    /** What the kit says goes before nothing; a cast whose kit isn't written down is analysed without. */
    private static Setup setup(List<Entry> entries) {
        Optional<Kit> kit =
                entries.stream().map(Entry::kit).filter(k -> k != null).findFirst();
        return kit.map(k -> new Setup(
                        k.rodLengthM(), k.freeLengthM(), k.dropM(), kilograms(k.rigLoadedG()), null, null, List.of()))
                .orElse(Setup.NONE);
    }

    private static @Nullable Double kilograms(@Nullable Double grams) {
        return grams == null ? null : grams / 1000;
    }

    /** A cast that nobody had written down, of a clip that shows it. */
    private static Throw further(Throw first, int number) {
        return new Throw(
                "",
                first.sessionId(),
                0,
                first.clipId(),
                number,
                first.kitId(),
                first.techniqueId(),
                null,
                null,
                null,
                null,
                null,
                "",
                "");
    }

    private void say(String line) {
        if (!talk.quiet()) {
            out.println(line);
            out.flush();
        }
    }
}
