package bendline.cli;

import bendline.analysis.Analyser;
import bendline.analysis.ClipAnalysis;
import bendline.book.Clip;
import bendline.book.ClipSetup;
import bendline.book.Entry;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import bendline.book.Throw;
import bendline.footage.Footage;
import bendline.footage.FootageException;
import bendline.report.CastFolder;
import bendline.report.ReportOptions;
import bendline.scene.Setup;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;

/** Analyses clips of the book with what their kit says and people corrected; what was found before stays. */
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
            Setup setup = ClipSetup.of(book, clip, entries);
            ClipAnalysis analysis = new Analyser().analyse(Footage.open(book.file(clip.file())), setup, bars);
            String place = book.placeForAnalysis();
            new CastFolder()
                    .write(
                            analysis,
                            book.file(place),
                            ReportOptions.PLAIN
                                    .veiling(faces.of(analysis, bars))
                                    .calling(clip.name()),
                            bars);
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
