package bendline.cli;

import bendline.body.Faces;
import bendline.report.MarkedOptions;
import bendline.report.ReportOptions;
import java.time.LocalDate;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How the report looks and what it holds beyond the usual. */
final class ReportChoices {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--pdf",
            description = "Write report.pdf too: the same on A4 pages, with text that can be searched.")
    private boolean pdf;

    @Mixin
    private ReaderOptions reader;

    @Option(
            names = "--stroke-slower",
            paramLabel = "N",
            defaultValue = "1",
            description = "Play the stroke in marked.mp4 this many times slower, 1 to 16.")
    private double slower;

    @Option(names = "--bend-panel", description = "Draw the live bend on a panel beside the picture in marked.mp4.")
    private boolean bendPanel;

    ReportOptions toOptions(Faces veiled) {
        return new ReportOptions(veiled, reader.toReader(), pdf, marked(), LocalDate.now(), null);
    }

    /** Complains of what can't be, before work is put into an analysis. */
    void check() {
        reader.toReader();
        marked();
    }

    private MarkedOptions marked() {
        try {
            return new MarkedOptions(slower, bendPanel);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "For --stroke-slower: " + e.getMessage() + ".");
        }
    }
}
