package bendline.cli;

import bendline.report.Reader;
import java.util.IllformedLocaleException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Whom a page is for. */
final class ReaderOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--yards",
            description = "Put yards, feet, ounces and pounds beside the metric units in the page's sentences.")
    private boolean yards;

    @Option(
            names = "--locale",
            paramLabel = "TAG",
            description =
                    "How the reader of the page writes numbers and dates, for example en-GB or de-DE; without it, as this"
                            + " computer does. The page's language stays English.")
    private @Nullable String locale;

    /** The reader; complains of what is no locale. */
    Reader toReader() {
        return new Reader(named(), yards);
    }

    private Locale named() {
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
}
