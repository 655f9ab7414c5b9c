package bendline.cli;

import bendline.book.BookCasts;
import bendline.book.Entry;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import bendline.book.Target;
import bendline.compare.Cast;
import bendline.compare.SessionTrend;
import bendline.compare.SessionTrend.Forecast;
import bendline.report.CastFolder;
import bendline.report.Reader;
import bendline.report.TrendFolder;
import bendline.stroke.Measure;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** One measure over the sessions of the book. */
@Command(
        name = "trend",
        description = "Show a measure over sessions, and how far off a target is.",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class BookTrendCommand implements Callable<Integer> {

    private static final int STEPS = 12;

    @Spec
    private CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "MEASURE",
            description = "distance, or the id of a measure, for example tempo.")
    private String measure;

    @Parameters(index = "1", arity = "0..1", paramLabel = "SELECTION", description = "Which casts; all unless told.")
    private @Nullable String which;

    @Option(names = "--target", paramLabel = "X", description = "A value to reach, which the book remembers.")
    private @Nullable Double target;

    @Option(names = "--by", paramLabel = "YYYY-MM-DD", description = "Until when.")
    private @Nullable String by;

    @Option(names = "--out", paramLabel = "DIR", description = "Also write trend.html into this folder.")
    private @Nullable Path out;

    @Mixin
    private ReaderOptions whom;

    @Mixin
    private BookOptions books;

    @Override
    public Integer call() throws IOException {
        Reader forWhom = whom.toReader();
        PracticeBook book = books.open();
        LocalDate day = by == null ? null : parsed(by);
        if (out != null) {
            CastFolder.check(out);
        }
        BookCasts reader = new BookCasts(book);
        List<Cast> casts = new ArrayList<>();
        for (Entry e : book.entries(which == null ? Selection.ALL : Selection.parse(which))) {
            casts.add(reader.cast(e, measure.equals(Cast.DISTANCE) ? Optional.empty() : reader.read(e)));
        }
        Measure named = named(casts);
        if (target != null) {
            book.target(new Target(
                    UUID.randomUUID().toString(),
                    null,
                    measure,
                    target,
                    by,
                    LocalDate.now(ZoneId.systemDefault()).toString()));
        }
        Optional<Target> remembered =
                book.targets().stream().filter(t -> t.measure().equals(measure)).reduce((first, second) -> second);
        Double aim = remembered.map(Target::value).orElse(null);
        LocalDate until = day != null
                ? day
                : remembered.map(Target::byDay).map(LocalDate::parse).orElse(null);
        SessionTrend trend =
                SessionTrend.of(measure, named.label(), named.unit(), SessionTrend.outings(casts, measure));
        TrendFolder folder = new TrendFolder(trend, ahead(trend, until, aim), aim);
        folder.lines().forEach(spec.commandLine().getOut()::println);
        if (out != null) {
            folder.write(out, forWhom);
            spec.commandLine().getOut().println("Trend: " + out.resolve("trend.html"));
        }
        return ExitStatus.DONE;
    }

    /** The measure with its words and unit; what nobody knows is told as such. */
    private Measure named(List<Cast> casts) {
        if (measure.equals(Cast.DISTANCE)) {
            return Cast.noDistance();
        }
        return casts.stream()
                .flatMap(c -> c.measure(measure).stream())
                .findFirst()
                .orElseThrow(
                        () -> new bendline.compare.ComparisonException("No analysed cast of the book knows the measure "
                                + measure + "; name distance or an id from analysis.json, for example tempo."));
    }

    private static List<Forecast> ahead(SessionTrend trend, @Nullable LocalDate until, @Nullable Double aim) {
        List<Forecast> out = new ArrayList<>();
        if (until == null || trend.outings().isEmpty()) {
            return out;
        }
        LocalDate last = trend.outings().get(trend.outings().size() - 1).day();
        long span = ChronoUnit.DAYS.between(last, until);
        for (int i = 0; i < STEPS && span > 0; i++) {
            out.add(trend.forecast(last.plusDays(span * i / STEPS), aim));
        }
        out.add(trend.forecast(until, aim));
        return out;
    }

    private LocalDate parsed(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            throw new ParameterException(
                    spec.commandLine(), "The day \"" + text + "\" can't be read; write it as 2026-05-03.");
        }
    }
}
