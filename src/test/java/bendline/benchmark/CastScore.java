package bendline.benchmark;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.technique.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The casts of a clip against the truth.
 *
 * @param events moments
 * @param findings verdicts
 * @param launchSpeed absolute error of the launch speed, as a share of the true one
 * @param launchAngleDeg absolute error of the launch angle, degrees
 * @param compression absolute error of the chord ratio in the stroke's series
 * @param load pull and energy
 * @param found of the casts that were made: reported
 * @param invented casts reported that nobody made
 */
public record CastScore(
        EventScore events,
        FindingScore findings,
        Spread launchSpeed,
        Spread launchAngleDeg,
        Spread compression,
        LoadScore load,
        Tally found,
        int invented) {

    /** Nothing. */
    public static final CastScore NONE = new CastScore(
            EventScore.NONE, FindingScore.NONE, Spread.NONE, Spread.NONE, Spread.NONE, LoadScore.NONE, Tally.NONE, 0);

    /** A reported cast belongs to a true one if their releases lie this close, seconds of real time. */
    private static final double SAME_CAST_SECONDS = 0.7;

    /** Compares; a cast that was overlooked counts with all its moments as not told. */
    public static CastScore of(ClipAnalysis told, TruthClip truth) {
        List<CastAnalysis> left = new ArrayList<>(told.casts());
        CastScore out = NONE;
        for (TruthCast cast : truth.casts()) {
            CastAnalysis match = nearest(left, cast, told.info().slowMotion().factor());
            left.remove(match);
            out = out.with(one(match, cast, truth, told.info().medianStepSeconds()));
        }
        return out.with(new CastScore(
                EventScore.NONE,
                FindingScore.NONE,
                Spread.NONE,
                Spread.NONE,
                Spread.NONE,
                LoadScore.NONE,
                Tally.NONE,
                left.size()));
    }

    private static @Nullable CastAnalysis nearest(List<CastAnalysis> casts, TruthCast truth, double slow) {
        CastAnalysis best = null;
        double bestAway = SAME_CAST_SECONDS * slow;
        for (CastAnalysis c : casts) {
            Double release = c.stroke().event(EventKind.RELEASE).seconds();
            Double turn = c.stroke().event(EventKind.FASTEST_TURN).seconds();
            Double at = release == null ? turn : release;
            double away = at == null
                    ? Double.POSITIVE_INFINITY
                    : Math.abs(at - truth.events().get("release"));
            if (away <= bestAway) {
                best = c;
                bestAway = away;
            }
        }
        return best;
    }

    private static CastScore one(@Nullable CastAnalysis told, TruthCast cast, TruthClip truth, double step) {
        List<EventScore.Entry> events = new ArrayList<>();
        cast.events().forEach((kind, seconds) -> {
            EventKind ours = kindOf(kind);
            if (ours != null) {
                events.add(
                        told == null
                                ? EventScore.Entry.missed(kind)
                                : EventScore.Entry.of(told.stroke().event(ours), kind, seconds, step));
            }
        });
        List<FindingScore.Entry> findings = new ArrayList<>();
        for (Map.Entry<String, String> fault : cast.faults().entrySet()) {
            String verdict = verdict(told, fault.getKey());
            if (verdict != null) {
                findings.add(new FindingScore.Entry(truth.name(), fault.getKey(), fault.getValue(), verdict));
            }
        }
        Stroke stroke = told == null ? null : told.stroke();
        return new CastScore(
                new EventScore(events),
                new FindingScore(findings),
                single(Math.abs(value(stroke, "launchSpeed") / cast.launchSpeedMps() - 1)),
                single(Math.abs(value(stroke, "launchAngleDeg") - cast.launchAngleDeg())),
                stroke == null ? Spread.NONE : compression(stroke.kinematics(), truth),
                LoadScore.of(stroke, cast, truth),
                Tally.NONE.plus(told != null),
                0);
    }

    private static @Nullable EventKind kindOf(String id) {
        for (EventKind kind : EventKind.values()) {
            if (kind.id().equals(id)) {
                return kind;
            }
        }
        return null;
    }

    /** Null where the fault is one that is not looked for. */
    private static @Nullable String verdict(@Nullable CastAnalysis told, String id) {
        if (told == null) {
            return id.equals("flat-rushed-backswing") || id.equals("tip-dropped-early") ? "no-cast" : null;
        }
        return told.review().findings().stream()
                .filter(f -> f.id().equals(id))
                .map(Finding::state)
                .map(Finding.State::id)
                .findFirst()
                .orElse(null);
    }

    private static double value(@Nullable Stroke stroke, String id) {
        if (stroke == null) {
            return Double.NaN;
        }
        return stroke.measures().stream()
                .filter(m -> m.id().equals(id))
                .map(Measure::value)
                .mapToDouble(v -> v == null ? Double.NaN : v)
                .findFirst()
                .orElse(Double.NaN);
    }

    private static Spread compression(Kinematics k, TruthClip truth) {
        double[] errors = new double[k.size()];
        for (int i = 0; i < errors.length; i++) {
            TruthFrame there = truth.at(k.clipSeconds()[i]);
            errors[i] = there.tipInView() ? Math.abs(k.chordRatio()[i] - there.chordRatio()) : Double.NaN;
        }
        return new Spread(errors);
    }

    private static Spread single(double value) {
        return new Spread(new double[] {value});
    }

    /** Both together. */
    public CastScore with(CastScore other) {
        List<EventScore.Entry> moments = new ArrayList<>(events.entries());
        moments.addAll(other.events.entries());
        List<FindingScore.Entry> verdicts = new ArrayList<>(findings.entries());
        verdicts.addAll(other.findings.entries());
        return new CastScore(
                new EventScore(moments),
                new FindingScore(verdicts),
                launchSpeed.with(other.launchSpeed),
                launchAngleDeg.with(other.launchAngleDeg),
                compression.with(other.compression),
                load.with(other.load),
                found.with(other.found),
                invented + other.invented);
    }
}
