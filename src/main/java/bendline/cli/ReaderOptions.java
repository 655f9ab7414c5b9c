package bendline.cli;

import bendline.report.Reader;
import java.util.IllformedLocaleException;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Whom pages are for. */
final class ReaderOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--yards", description = "Put yards, feet, ounces and pounds beside the metric units in sentences.")
    private boolean yards;

    @Option(
            names = "--locale",
            paramLabel = "TAG",
            description =
                    "How the reader writes numbers and dates, for example en-GB or de-DE; without it, as this computer does."
                            + " The language stays English.")
    private @Nullable String locale;

    /** How they write numbers. */
    Reader reader() {
        return new Reader(locale(), yards);
    }

    private Locale locale() {
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
