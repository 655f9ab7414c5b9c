package bendline.cli;

import bendline.analysis.Analyser;
import bendline.analysis.ClipAnalysis;
import bendline.book.BookCasts;
import bendline.book.Entry;
import bendline.book.Selection;
import bendline.compare.Cast;
import bendline.compare.CastSet;
import bendline.compare.ComparisonException;
import bendline.footage.Footage;
import bendline.report.AnalysisReader;
import bendline.report.CastFolder;
import bendline.report.ReadCast;
import bendline.scene.Setup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Reads what a set is named by: analyses, clips, folders of either, or a selection of the book. */
final class SetReader {

    private static final String BOOK = "book:";

    private final CommandSpec spec;
    private final BookOptions books;
    private final Path analyses;
    private final Setup setup;
    private final TalkOptions talk;
    private FaceOptions faces = new FaceOptions();

    /**
     * @param analyses where clips that aren't analysed yet leave their analyses
     * @param setup what is known of rod and rig, for such clips
     */
    SetReader(CommandSpec spec, BookOptions books, Path analyses, Setup setup, TalkOptions talk) {
        this.spec = spec;
        this.books = books;
        this.analyses = analyses;
        this.setup = setup;
        this.talk = talk;
    }

    /** The same, with faces made unrecognisable in what is written of clips. */
    SetReader veiling(FaceOptions options) {
        faces = options;
        return this;
    }

    GivenSet read(String given) throws IOException {
        if (given.startsWith(BOOK)) {
            return fromBook(given.substring(BOOK.length()));
        }
        List<ReadCast> casts = new ArrayList<>();
        for (String part : given.split(",")) {
            for (Path folder : folders(Path.of(part.strip()))) {
                casts.addAll(new AnalysisReader().read(folder));
            }
        }
        String label = label(given);
        List<Cast> set = casts.stream().map(r -> r.cast(name(r))).toList();
        return new GivenSet(new CastSet(label, set), casts);
    }

    private static String label(String given) {
        if (given.contains(",")) {
            return given;
        }
        Path last = Path.of(given).toAbsolutePath().normalize().getFileName();
        return last == null ? given : last.toString();
    }

    private static String name(ReadCast r) {
        return r.folder() + (r.of() > 1 ? ", cast " + r.number() : "");
    }

    private GivenSet fromBook(String selection) {
        BookCasts casts = new BookCasts(books.open());
        Map<Entry, Optional<ReadCast>> all = new LinkedHashMap<>();
        books.open().entries(Selection.parse(selection)).forEach(e -> all.put(e, casts.read(e)));
        List<Cast> set = new ArrayList<>();
        all.forEach((e, read) -> set.add(casts.cast(e, read)));
        List<ReadCast> read = all.values().stream().flatMap(Optional::stream).toList();
        if (!set.isEmpty()
                && read.isEmpty()
                && set.stream().allMatch(c -> c.distance().value() == null)) {
            throw new ComparisonException("None of the " + set.size() + " casts of " + selection
                    + " has been analysed or measured; run book analyse, or write down distances with book measure.");
        }
        return new GivenSet(new CastSet(selection, set), read);
    }

    /** The folders of analyses that a path stands for. */
    private List<Path> folders(Path path) throws IOException {
        if (!Files.exists(path)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "There is no folder and no clip " + path + "; name analyses, clips or book:SELECTION.");
        }
        if (!Files.isDirectory(path)) {
            return List.of(analysed(path));
        }
        if (AnalysisReader.isAnalysis(path)) {
            return List.of(path);
        }
        List<Path> out = new ArrayList<>();
        try (Stream<Path> inside = Files.list(path)) {
            inside.filter(AnalysisReader::isAnalysis).sorted().forEach(out::add);
        }
        if (out.isEmpty()) {
            for (Path clip : ClipFolder.clips(path)) {
                out.add(analysed(clip));
            }
        }
        if (out.isEmpty()) {
            throw new ComparisonException(
                    "The folder " + path
                            + " holds neither analyses nor clips; name a folder that analyse wrote, one of such folders, or one of clips.");
        }
        return out;
    }

    /** The analysis of a clip, made now unless an earlier comparison has made it. */
    private Path analysed(Path clip) throws IOException {
        String name = clip.getFileName().toString();
        Path to = analyses.resolve(
                clip.toAbsolutePath().getParent().getFileName() + "-" + name.replaceAll("\\.[^.]*$", ""));
        if (AnalysisReader.isAnalysis(to)) {
            return to;
        }
        if (!talk.quiet()) {
            spec.commandLine().getOut().println("Analysing " + clip);
            spec.commandLine().getOut().flush();
        }
        try (Bars bars = talk.bars()) {
            ClipAnalysis analysis = new Analyser().analyse(Footage.open(clip), setup, bars);
            new CastFolder().write(analysis, to, faces.of(analysis, bars), bars);
        }
        return to;
    }
}
