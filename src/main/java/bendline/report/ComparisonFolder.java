package bendline.report;

import bendline.analysis.Progress;
import bendline.compare.Comparison;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The folder that a comparison becomes. It appears whole under its name or not at all. */
public final class ComparisonFolder {

    /**
     * Writes {@code comparison.html}, {@code comparison.json}, {@code charts/}, {@code frames/} and {@code side-by-side.mp4}.
     *
     * @param comparison what to write
     * @param a the casts of set A that were filmed
     * @param b those of set B
     * @param out a name that is free, or an empty folder
     * @param progress told what is being written
     * @throws OutputFolderException where the folder can't be used
     * @throws IOException where writing failed half way; nothing is left behind
     */
    public void write(Comparison comparison, List<ReadCast> a, List<ReadCast> b, Path out, Progress progress)
            throws IOException {
        write(comparison, new Films(a, b), out, Reader.PLAIN, progress);
    }

    /**
     * The casts that were filmed.
     *
     * @param a of set A
     * @param b of set B
     */
    public record Films(List<ReadCast> a, List<ReadCast> b) {}

    /**
     * The same for a reader.
     *
     * @throws OutputFolderException where the folder can't be used
     * @throws IOException where writing failed half way; nothing is left behind
     */
    public void write(Comparison comparison, Films films, Path out, Reader reader, Progress progress)
            throws IOException {
        try (OutputFolder folder = OutputFolder.beside(out)) {
            Path in = folder.staging();
            Files.createDirectory(in.resolve("charts"));
            Files.createDirectory(in.resolve("frames"));
            Files.writeString(in.resolve("comparison.json"), new ComparisonJson().write(comparison));
            ComparisonPictures pictures = pictures(comparison, films.a(), films.b(), in, progress);
            Files.writeString(in.resolve("comparison.html"), new ComparisonPage(comparison, pictures, reader).write());
            folder.publish();
        }
    }

    private static ComparisonPictures pictures(
            Comparison c, List<ReadCast> a, List<ReadCast> b, Path in, Progress progress) throws IOException {
        Optional<SetPictures> left = SetPictures.of(a, c, false);
        Optional<SetPictures> right = SetPictures.of(b, c, true);
        if (left.isEmpty() || right.isEmpty()) {
            return new ComparisonPictures(List.of(), List.of(), List.of(), List.of(), "", "", false);
        }
        List<String> fans = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        if (Lettering.works()) {
            draw(a, b, left.get().cast(), right.get().cast(), fans, lines);
        }
        save(in, "fans", fans);
        save(in, "time-lines", lines);
        List<Still> stillsA = List.of();
        List<Still> stillsB = List.of();
        boolean filmed = left.get().filmed() && right.get().filmed();
        if (filmed) {
            progress.at("Cutting the film strips", 0);
            stillsA = FilmStrip.of(left.get(), "a", in);
            stillsB = FilmStrip.of(right.get(), "b", in);
            progress.at("Writing the clip side by side", 0.3);
            String[] labels = {"A: " + c.a().label(), "B: " + c.b().label()};
            SideBySide.write(left.get(), right.get(), labels, in.resolve("side-by-side.mp4"));
        }
        progress.at("Writing the clip side by side", 1);
        return new ComparisonPictures(
                fans,
                lines,
                stillsA,
                stillsB,
                left.get().cast().name(),
                right.get().cast().name(),
                filmed);
    }

    private static void draw(
            List<ReadCast> a, List<ReadCast> b, ReadCast left, ReadCast right, List<String> fans, List<String> lines) {
        for (ChartSize size : ChartSize.values()) {
            new TwoFansChart(left, right)
                    .draw(size, "fans-" + size.id(), "Curves of the blank of a cast of A and one of B")
                    .ifPresent(fans::add);
            lines.add(new AlignedLinesChart(a, b, size)
                    .svg("lines-" + size.id(), "Butt angle, compression and tip speed of all casts from the release"));
        }
    }

    private static void save(Path in, String name, List<String> drawings) throws IOException {
        if (!drawings.isEmpty()) {
            Files.writeString(in.resolve("charts").resolve(name + ".svg"), drawings.get(0));
        }
    }
}
