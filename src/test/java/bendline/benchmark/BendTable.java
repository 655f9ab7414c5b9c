package bendline.benchmark;

import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.rod.Blank;
import bendline.rod.SimulatedRodTest;
import bendline.scene.BlankFacts;
import bendline.scene.Setup;
import bendline.simulate.CastFilm;
import bendline.simulate.RodRing;
import bendline.simulate.Scenario;
import bendline.simulate.Truth;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.stroke.StrokeTimer;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What is read of the bend of simulated casts, from traces with the tracker's measured errors and a rod measured under a weight,
 * beside the truth: {@code BendTable SEED COUNT [each]}. Some seconds a cast.
 */
public final class BendTable {

    /** Used for nothing else. */
    static final long REPORTED = 312;

    static final int COUNT = 40;
    private static final double[] RATES = {60, 30, 120, 60, 240};
    private static final double[] YAWS = {0, 4, -4, 12, -8, 2, -16};

    private BendTable() {}

    /** Runs it. */
    public static void main(String[] args) {
        System.out.println(table(Long.parseLong(args[0]), Integer.parseInt(args[1]), args.length > 2));
    }

    /** What is compared: how the error is written, and over what. */
    private enum Kind {
        PULL("peakTipForce", "%", true),
        ENERGY("storedEnergy", "%", true),
        LEFT("energyLeftShare", "", false),
        STRAIGHT("straightAfterRelease", " s", false),
        RING("ringHz", "%", true),
        DAMPING("ringDamping", "%", true),
        COMPRESSION("compression", "", false);

        private final String id;
        private final String unit;
        private final boolean relative;

        Kind(String id, String unit, boolean relative) {
            this.id = id;
            this.unit = unit;
            this.relative = relative;
        }
    }

    /** One measure of one cast; NaN where it was not told. */
    private record Error(Kind kind, double error, double stated) {}

    static String table(long seed, int count, boolean each) {
        List<Scenario> deck = GridDeck.deal(seed, count);
        List<Error> errors = IntStream.range(0, count)
                .parallel()
                .mapToObj(i -> errors(CastFilm.of(deck.get(i)), i, seed, each))
                .flatMap(List::stream)
                .toList();
        StringBuilder out =
                new StringBuilder("| measure | told | median error | 90 % | within stated |\n|---|---|---|---|---|\n");
        for (Kind k : Kind.values()) {
            out.append(row(k, errors.stream().filter(e -> e.kind == k).toList()));
        }
        return out.toString();
    }

    private static String row(Kind kind, List<Error> errors) {
        List<Error> told = errors.stream().filter(e -> !Double.isNaN(e.error)).toList();
        Spread size =
                new Spread(told.stream().mapToDouble(e -> Math.abs(e.error)).toArray());
        Tally within = Tally.NONE;
        for (Error e : told) {
            within = within.plus(Math.abs(e.error) <= e.stated);
        }
        String number = kind.relative ? "%.1f %s" : "%.3f%s";
        return String.format(
                Locale.ROOT,
                "| %s | %d of %d | " + number + " | " + number + " | %.0f %% |%n",
                kind.id,
                told.size(),
                errors.size(),
                (kind.relative ? 100 : 1) * size.median(),
                kind.unit,
                (kind.relative ? 100 : 1) * size.quantile(0.9),
                kind.unit,
                100 * within.share());
    }

    private static List<Error> errors(CastFilm film, int i, long seed, boolean each) {
        Truth truth = film.seenBy(GridDeck.camera(RATES[i % RATES.length], YAWS[i % YAWS.length]));
        Stroke stroke = read(truth, new Random(seed * 1000 + i));
        Map<Kind, Double> right = right(truth, film);
        List<Error> out = new ArrayList<>();
        StringBuilder line = new StringBuilder(truth.scenario().name());
        right.forEach((kind, value) -> {
            Measure m = stroke == null ? null : stroke.measure(kind.id);
            boolean told = m != null && m.value() != null && !Double.isNaN(value);
            double over = kind.relative ? value : 1;
            out.add(
                    told
                            ? new Error(kind, (m.value() - value) / over, m.plusMinus() / over)
                            : new Error(kind, Double.NaN, Double.NaN));
            line.append(String.format(
                    Locale.ROOT, " | %s %s (%.3g)", kind.id, told ? m.value() + " ± " + m.plusMinus() : "?", value));
        });
        if (each) {
            System.out.println(line);
        }
        return out;
    }

    private static Map<Kind, Double> right(Truth truth, CastFilm film) {
        Map<String, Double> m = truth.casts().get(0).measures();
        Map<String, Double> at = truth.casts().get(0).events();
        RodRing.Ring ring = RodRing.of(truth.scenario().rod());
        Map<Kind, Double> out = new TreeMap<>();
        out.put(Kind.PULL, SimulatedTruth.peakPullN(truth.casts().get(0), truth));
        out.put(Kind.ENERGY, m.get("peakElasticJ"));
        out.put(Kind.LEFT, m.get("elasticAtReleaseJ") / m.get("peakElasticJ"));
        out.put(Kind.STRAIGHT, at.getOrDefault("rodStraight", Double.NaN) - at.get("release"));
        out.put(Kind.RING, ring.hz());
        out.put(Kind.DAMPING, damping(film.seenBy(GridDeck.camera(240, 0)), at.get("release")));
        out.put(Kind.COMPRESSION, 1 - m.get("smallestChordRatio"));
        return out;
    }

    /**
     * How fast the true ring dies over the time in which it is read, the air's share in it: from the way between one extreme of the
     * tip's lag and the next, which knows of no middle (logarithmic decrement, textbook). NaN where it swings less than three times.
     */
    private static double damping(Truth truth, double release) {
        List<Double> extremes = new ArrayList<>();
        List<TruthFrame> frames = SimulatedTruth.of(truth).frames().stream()
                .filter(f -> f.blank() != null && f.seconds() > release + 0.25 && f.seconds() < release + 1.1)
                .toList();
        double[] lag = frames.stream().mapToDouble(BendTable::lag).toArray();
        for (int i = 1; i + 1 < lag.length; i++) {
            if ((lag[i] - lag[i - 1]) * (lag[i + 1] - lag[i]) < 0) {
                extremes.add(lag[i]);
            }
        }
        int ways = extremes.size() - 1;
        if (ways < 2) {
            return Double.NaN;
        }
        double first = Math.abs(extremes.get(1) - extremes.get(0));
        double last = Math.abs(extremes.get(ways) - extremes.get(ways - 1));
        double decrement = 2 * Math.log(first / last) / (ways - 1);
        return decrement / Math.hypot(2 * Math.PI, decrement);
    }

    private static double lag(TruthFrame f) {
        Polyline blank = f.blank();
        Point chord = blank.last().minus(blank.first());
        return Math.IEEEremainder(Math.atan2(-chord.y(), chord.x()) - Math.toRadians(f.buttAngleDeg()), 2 * Math.PI);
    }

    private static @Nullable Stroke read(Truth truth, Random random) {
        List<TraceNoise> noises = TraceNoise.measured();
        TraceNoise noise = noises.get(random.nextInt(noises.size()));
        TruthClip clip = SimulatedTruth.of(truth);
        Trace trace = NoisyFilm.of(clip, noise, 1, 1, random.nextLong());
        Scenario s = truth.scenario();
        Setup setup = new Setup(
                        s.rod().lengthM(),
                        s.rod().freeLengthM(),
                        s.rig().dropM(),
                        s.rig().massG() / 1000,
                        null,
                        null,
                        List.of())
                .withBlank(measured(s));
        return MomentScores.match(
                new StrokeTimer().time(trace, setup, new SlowMotion(1, "given")),
                clip.casts().get(0),
                1);
    }

    private static BlankFacts measured(Scenario s) {
        Blank b = SimulatedRodTest.calibrated(s.rod(), s.rig().massG() / 85, 1);
        return new BlankFacts(
                null,
                null,
                null,
                new BlankFacts.Measured(
                        b.stiffnessNm2(), b.stiffnessRelativeSd(), b.taper().stiffnessAt(1)));
    }
}
