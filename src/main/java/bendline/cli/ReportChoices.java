package bendline.cli;

import bendline.body.Faces;
import bendline.report.MarkedOptions;
import bendline.report.Reader;
import bendline.report.ReportOptions;
import java.time.LocalDate;
import java.util.IllformedLocaleException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
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

    @Option(
            names = "--yards",
            description = "Put yards, feet, ounces and pounds beside the metric units in the report's sentences.")
    private boolean yards;

    @Option(
            names = "--locale",
            paramLabel = "TAG",
            description =
                    "How the reader of the report writes numbers and dates, for example en-GB or de-DE; without it,"
                            + " as this computer does. The report's language stays English.")
    private @Nullable String locale;

    @Option(
            names = "--stroke-slower",
            paramLabel = "N",
            defaultValue = "1",
            description = "Play the stroke in marked.mp4 this many times slower, 1 to 16.")
    private double slower;

    @Option(names = "--bend-panel", description = "Draw the live bend on a panel beside the picture in marked.mp4.")
    private boolean bendPanel;

    ReportOptions toOptions(Faces veiled) {
        return new ReportOptions(veiled, new Reader(reader(), yards), pdf, marked(), LocalDate.now());
    }

    /** Complains of what can't be, before work is put into an analysis. */
    void check() {
        reader();
        marked();
    }

    private Locale reader() {
        if (locale == null) {
            return Locale.getDefault(Locale.Category.FORMAT);
        }
        try {
            return new Locale.Builder().setLanguageTag(locale.replace('_', '-')).build();
        } catch (IllformedLocaleException e) {
            throw new ParameterException(
                    spec.commandLine(),
                    "\"" + locale + "\" is no locale; write a language and a country, such as en-GB.");
        }
    }

    private MarkedOptions marked() {
        try {
            return new MarkedOptions(slower, bendPanel);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "For --stroke-slower: " + e.getMessage() + ".");
        }
    }
}
