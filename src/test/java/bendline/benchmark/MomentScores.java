package bendline.benchmark;

import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Errors of moments and launches against the truth, by kind, with what was stated. Not safe for several threads. */
final class MomentScores {

    /** A moment's or measure's error and its stated 68 %, both in frames, percent or degrees. */
    record Error(double error, double stated) {}

    private final Map<String, List<Error>> byKind = new TreeMap<>();
    private int happened;
    private int overlooked;

    /** Adds one cast, or that it was overlooked; gives its errors in one line. */
    String add(@Nullable Stroke s, TruthCast cast, double step) {
        happened++;
        if (s == null) {
            overlooked++;
            return "OVERLOOKED";
        }
        StringBuilder line = new StringBuilder();
        for (EventKind kind : EventKind.values()) {
            Double truth = cast.events().get(kind.id());
            Event e = s.event(kind);
            if (truth != null && e.seconds() != null) {
                put(kind.id(), (e.seconds() - truth) / step, e.plusMinusSeconds() / step, line);
            } else if (truth != null) {
                put(kind.id(), Double.NaN, Double.NaN, line);
            }
        }
        measure(s, "launchSpeed", cast.launchSpeedMps(), cast.launchSpeedMps() / 100, line);
        measure(s, "launchAngleDeg", cast.launchAngleDeg(), 1, line);
        return line.toString();
    }

    private void measure(Stroke s, String id, double truth, double unit, StringBuilder line) {
        Measure m = s.measure(id);
        boolean known = m.value() != null && !Double.isNaN(truth);
        put(id, known ? (m.value() - truth) / unit : Double.NaN, m.plusMinus() / unit, line);
    }

    private void put(String kind, double error, double stated, StringBuilder line) {
        byKind.computeIfAbsent(kind, k -> new ArrayList<>()).add(new Error(error, stated));
        line.append(String.format(Locale.ROOT, " %s %+.1f±%.1f", kind, error, stated));
    }

    /** All of one kind that were told. */
    List<Error> of(String kind) {
        return byKind.getOrDefault(kind, List.of()).stream()
                .filter(e -> !Double.isNaN(e.error))
                .toList();
    }

    /** Moments of all kinds that were told. */
    List<Error> moments() {
        return byKind.keySet().stream()
                .filter(k -> !k.startsWith("launch"))
                .flatMap(k -> of(k).stream())
                .toList();
    }

    Iterable<String> kinds() {
        return byKind.keySet();
    }

    double toldShare(String kind) {
        return (double) of(kind).size() / byKind.get(kind).size();
    }

    static Spread sizes(List<Error> errors) {
        return new Spread(errors.stream().mapToDouble(e -> Math.abs(e.error)).toArray());
    }

    static double within(List<Error> errors) {
        return errors.stream().filter(e -> Math.abs(e.error) <= e.stated).count() / (double) errors.size();
    }

    static double bias(List<Error> errors) {
        return new Spread(errors.stream().mapToDouble(Error::error).toArray()).median();
    }

    @Override
    public String toString() {
        StringBuilder out = new StringBuilder(String.format(Locale.ROOT, "%d casts, %d overlooked%n", happened, overlooked));
        for (String kind : kinds()) {
            out.append(row(kind, of(kind), toldShare(kind)));
        }
        return out.append(row("all moments", moments(), Double.NaN)).toString();
    }

    private static String row(String name, List<Error> e, double told) {
        Spread s = sizes(e);
        return String.format(
                Locale.ROOT,
                "%-15s told %4.0f %%  median %6.2f  68 %% %6.2f  95 %% %7.2f  bias %+6.2f  stated %6.2f  within %5.1f %%%n",
                name,
                100 * told,
                s.median(),
                s.quantile(0.68),
                s.p95(),
                bias(e),
                new Spread(e.stream().mapToDouble(Error::stated).toArray()).median(),
                100 * within(e));
    }

    /** The stroke that belongs to a true cast, or null. */
    static @Nullable Stroke match(List<Stroke> strokes, TruthCast truth, double slow) {
        double at = truth.events().get("release");
        return strokes.stream()
                .filter(s -> Math.abs(moment(s) - at) <= 0.7 * slow)
                .min(Comparator.comparingDouble(s -> Math.abs(moment(s) - at)))
                .orElse(null);
    }

    private static double moment(Stroke s) {
        Double release = s.event(EventKind.RELEASE).seconds();
        Double turn = s.event(EventKind.FASTEST_TURN).seconds();
        return release != null ? release : turn != null ? turn : Double.POSITIVE_INFINITY;
    }
}
