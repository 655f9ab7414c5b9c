package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The folder that one analysis becomes. It appears whole under its name or not at all: everything is written into a hidden
 * folder beside it, which is then moved.
 */
public final class CastFolder {

    /**
     * Checks that a folder can be written under a name, before work is put into an analysis.
     *
     * @param out a name that is free, or an empty folder
     * @throws OutputFolderException with one sentence for the user where it can't be used
     */
    public static void check(Path out) {
        OutputFolder.check(out);
    }

    /**
     * Writes everything.
     *
     * @param analysis what to write; its clip is read again for the pictures
     * @param out a name that is free, or an empty folder
     * @param progress told what is being written
     * @throws OutputFolderException where the folder can't be used
     * @throws IOException where writing failed half way; nothing is left behind
     */
    public void write(ClipAnalysis analysis, Path out, Progress progress) throws IOException {
        try (OutputFolder folder = OutputFolder.beside(out)) {
            Path in = folder.staging();
            Files.writeString(in.resolve("analysis.json"), new AnalysisJson().write(analysis));
            try (BufferedWriter csv = Files.newBufferedWriter(in.resolve("frames.csv"))) {
                new FramesCsv().write(analysis, csv);
            }
            folder.publish();
        }
    }
}
