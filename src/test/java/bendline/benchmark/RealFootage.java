package bendline.benchmark;

import bendline.analysis.Analyser;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.scene.Mark;
import bendline.scene.Setup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Footage filmed by others, kept beside the project: what a person sees in it and what is said of it. */
final class RealFootage {

    /** Labels are read to about a pixel and the blank is one to three pixels wide; the clips are small. */
    static final double ON_THE_BLANK_PX = 3;

    /** A stretch in which a person labelled the rod, followed from one mark. */
    static final List<Stretch> STRETCHES = List.of(
            new Stretch("rod-bent-portrait.mp4", "rod-bent-portrait", 436, 404, 524),
            new Stretch("rod-bent-portrait.mp4", "rod-bent-portrait", 404, 396, 436),
            new Stretch("rod-bent-portrait.mp4", "rod-bent-portrait", 516, 508, 524),
            new Stretch("rod-bent-clutter.mp4", "rod-bent-clutter", 602, 594, 618),
            new Stretch("rod-two-boat.mp4", "rod-two-boat-right", 10, 0, 18),
            new Stretch("rod-two-boat.mp4", "rod-two-boat-left", 270, 264, 278));

    /** Clips in which nobody casts. */
    static final List<String> WITHOUT_CAST = List.of(
            "rods-at-rest-river.mp4",
            "geese-lake.mp4",
            "throw-no-rod.avi",
            "club-swing.mp4",
            "rod-bent-portrait.mp4",
            "rod-pan-pov.mp4");

    private RealFootage() {}

    /**
     * Labelled frames of a clip.
     *
     * @param clip file name
     * @param labels name of the labels
     * @param marked the labelled frame on which grip and tip are marked
     * @param from first frame
     * @param to last frame
     */
    record Stretch(String clip, String labels, int marked, int from, int to) {

        /** Follows the rod from the mark and compares. */
        LabelScore score(Path folder) throws IOException {
            HandLabels all = HandLabels.read(labels);
            HandLabels.Label label = all.at(marked);
            Path file = folder.resolve(clip);
            ClipInfo info = Footage.open(file).survey(f -> {});
            Mark mark = new Mark(info.times().get(marked), label.grip(), label.tip());
            Setup setup = new Setup(null, null, null, null, null, null, List.of(mark));
            ClipAnalysis told = new Analyser().analyse(file, setup, Progress.SILENT);
            return LabelScore.of(told.trace(), all.between(from, to));
        }

        @Override
        public String toString() {
            return labels + " " + from + "–" + to;
        }
    }

    /** Casts reported in a clip. */
    static int casts(Path clip) {
        return new Analyser().analyse(clip, Setup.NONE, Progress.SILENT).casts().size();
    }

    /** A Markdown table of all of it, or a sentence where the footage is not here. */
    static String table(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return "Real footage is not here, so there are no rows for it.";
        }
        StringBuilder out = new StringBuilder(
                "**Real footage**, labelled by hand\n\n"
                        + "| stretch, marked on one frame | blank within 3 px of the labels, of the labelled frames |\n|---|---|\n");
        for (Stretch s : STRETCHES) {
            Tally on = s.score(folder).onBlank(ON_THE_BLANK_PX);
            out.append(String.format(Locale.ROOT, "| %s | %d of %d |%n", s, on.hits(), on.of()));
        }
        out.append("\n| clip in which nobody casts | casts reported |\n|---|---|\n");
        for (String clip : WITHOUT_CAST) {
            int casts = casts(folder.resolve(clip));
            out.append(String.format(Locale.ROOT, "| %s | %d%s |%n", clip, casts, casts == 0 ? "" : " ✗"));
        }
        return out.toString();
    }

    /** Prints the table for the folder {@code clips} of the shared folder. */
    public static void main(String[] args) throws IOException {
        System.out.println(table(SharedFolder.path().resolve("clips")));
    }
}
