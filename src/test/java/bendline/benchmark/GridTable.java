package bendline.benchmark;

import bendline.benchmark.StrokeBench.Read;
import bendline.benchmark.StrokeBench.View;
import bendline.simulate.CastFilm;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Prints what the README says of the two main faults, of the moments and of what a faster or a squarer phone is worth, on simulated
 * casts with the tracker's measured errors, and what each fault costs: {@code GridTable FILE}.
 */
public final class GridTable {

    /** Uncertainties of moments are fitted to the first of these and reported on the second. */
    private static final long FITTED = 301;

    private static final long REPORTED = 302;
    private static final int EACH = 110;

    private static final long COMPARED = 303;
    private static final int COMPARED_COUNT = 18;
    private static final List<String> FAULTS = List.of("flat-rushed-backswing", "tip-dropped-early");

    private GridTable() {}

    /** Runs it. */
    public static void main(String[] args) throws IOException {
        List<Read> fitted = StrokeBench.reads(FITTED, EACH);
        List<Read> reported = StrokeBench.reads(REPORTED, EACH);
        String text = text(fitted, reported) + "\n" + views() + "\n" + CostTable.table();
        Path file = Path.of(args[0]);
        Files.createDirectories(file.toAbsolutePath().getParent());
        Files.writeString(file, text);
        System.out.println(text);
    }

    static String text(List<Read> fitted, List<Read> reported) {
        List<Read> all = new ArrayList<>(fitted);
        all.addAll(reported);
        return findings(all) + "\n" + moments(reported);
    }

    private static String findings(List<Read> reads) {
        FindingScore score = StrokeBench.verdicts(reads);
        StringBuilder out = new StringBuilder(String.format(
                Locale.ROOT,
                "| %d casts | found, of the clear | found, of the mild | called clear of it, of those without"
                        + " | found where there is none | no verdict, of the clear and those without |%n|---|---|---|---|---|---|%n",
                reads.size()));
        for (String id : FAULTS) {
            out.append(String.format(
                    Locale.ROOT,
                    "| %s | %s | %s | %s | %s | %s |%n",
                    id,
                    share(score, id, List.of("clear"), "found"::equals),
                    share(score, id, List.of("mild"), "found"::equals),
                    share(score, id, List.of("none"), "clear"::equals),
                    share(score, id, List.of("none"), "found"::equals),
                    share(score, id, List.of("none", "clear"), v -> !v.equals("found") && !v.equals("clear"))));
        }
        return out + "\n" + score.table();
    }

    private static String share(FindingScore score, String id, List<String> grades, Predicate<String> verdict) {
        return text(tally(score, List.of(id), grades, verdict));
    }

    private static Tally tally(FindingScore score, List<String> ids, List<String> grades, Predicate<String> verdict) {
        Tally t = Tally.NONE;
        for (FindingScore.Entry e : score.entries()) {
            if (ids.contains(e.id()) && grades.contains(e.grade())) {
                t = t.plus(verdict.test(e.verdict()));
            }
        }
        return t;
    }

    private static String text(Tally t) {
        double[] i = t.interval();
        return String.format(
                Locale.ROOT,
                "%.0f %% (%.0f–%.0f %%, %d of %d)",
                100 * t.share(),
                100 * i[0],
                100 * i[1],
                t.hits(),
                t.of());
    }

    private static String moments(List<Read> reads) {
        MomentScores scores = new MomentScores();
        reads.forEach(r -> scores.add(r.stroke(), r.truth(), r.step()));
        StringBuilder out = new StringBuilder(
                "| moment | told | median error | 68 % | stated, median | within stated |\n|---|---|---|---|---|---|\n");
        for (String kind : scores.kinds()) {
            String unit = kind.equals("launchSpeed") ? " %" : kind.equals("launchAngleDeg") ? "°" : " frames";
            out.append(row(kind, scores.toldShare(kind), scores.of(kind), unit));
        }
        return out + row("all moments", Double.NaN, scores.moments(), " frames");
    }

    private static String row(String kind, double told, List<MomentScores.Error> errors, String unit) {
        Spread size = MomentScores.sizes(errors);
        Spread stated = new Spread(
                errors.stream().mapToDouble(MomentScores.Error::stated).toArray());
        return String.format(
                Locale.ROOT,
                "| %s | %s | %.2f%s | %.2f%s | %.2f%s | %.0f %% |%n",
                kind,
                Double.isNaN(told) ? "" : String.format(Locale.ROOT, "%.0f %%", 100 * told),
                size.median(),
                unit,
                size.quantile(0.68),
                unit,
                stated.median(),
                unit,
                100 * MomentScores.within(errors));
    }

    /** The same casts as other phones see them. */
    private static String views() {
        List<CastFilm> films = GridDeck.films(GridDeck.deal(COMPARED, COMPARED_COUNT));
        StringBuilder out = new StringBuilder("| the same " + COMPARED_COUNT
                + " casts, filmed | release, median ± | settle, median ± | tempo, median ± | verdicts given | of these right |\n"
                + "|---|---|---|---|---|---|\n");
        for (double fps : new double[] {30, 60, 120, 240}) {
            out.append(line(films, new View(fps, 0, 0.3), fps + " frames a second, square, short exposure"));
        }
        for (double exposed : new double[] {0.6, 1}) {
            out.append(line(films, new View(60, 0, exposed), "60, square, exposed for " + exposed + " of the frame"));
        }
        for (double yaw : new double[] {8, 16, 24}) {
            out.append(line(films, new View(60, yaw, 0.3), "60, " + yaw + "° off square, short exposure"));
        }
        return out.toString();
    }

    private static String line(List<CastFilm> films, View view, String name) {
        List<TraceNoise> noises = TraceNoise.measured();
        List<Read> reads = IntStream.range(0, films.size())
                .parallel()
                .mapToObj(i -> StrokeBench.read(films.get(i), view, noises.get(i % noises.size()), COMPARED + i))
                .toList();
        FindingScore score = StrokeBench.verdicts(reads);
        Tally given = tally(score, FAULTS, List.of("none", "clear"), v -> v.equals("found") || v.equals("clear"));
        int right = tally(score, FAULTS, List.of("none"), "clear"::equals).hits()
                + tally(score, FAULTS, List.of("clear"), "found"::equals).hits();
        return String.format(
                Locale.ROOT,
                "| %s | %.0f ms | %.2f s | %.2f | %d of %d | %d |%n",
                name.replace(".0", ""),
                1000 * median(reads, r -> releaseSd(r.stroke())),
                median(reads, r -> measureSd(r.stroke(), "settleSeconds")),
                median(reads, r -> measureSd(r.stroke(), "tempo")),
                given.hits(),
                given.of(),
                right);
    }

    private static double releaseSd(@org.jspecify.annotations.Nullable Stroke s) {
        return s == null
                ? Double.NaN
                : s.event(bendline.stroke.EventKind.RELEASE).plusMinusSeconds();
    }

    private static double measureSd(@org.jspecify.annotations.Nullable Stroke s, String id) {
        Measure m = s == null ? null : s.measure(id);
        return m == null || m.value() == null ? Double.NaN : m.plusMinus();
    }

    private static double median(List<Read> reads, java.util.function.ToDoubleFunction<Read> value) {
        double[] known = reads.stream()
                .mapToDouble(value)
                .filter(v -> !Double.isNaN(v))
                .sorted()
                .toArray();
        return known.length == 0
                ? Double.NaN
                : Arrays.stream(known).skip(known.length / 2).findFirst().orElseThrow();
    }
}
