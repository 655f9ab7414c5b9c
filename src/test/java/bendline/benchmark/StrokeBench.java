package bendline.benchmark;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.simulate.CastFilm;
import bendline.simulate.RodSpec;
import bendline.simulate.Scenario;
import bendline.stroke.Stroke;
import bendline.stroke.StrokeTimer;
import bendline.technique.Finding;
import bendline.technique.TechniqueReview;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Reads the strokes of simulated casts from traces with the tracker's measured errors, no picture in between: some seconds a cast,
 * most of them for its motion. {@code StrokeBench SEED COUNT [each]}.
 */
public final class StrokeBench {

    private static final double[] RATES = {60, 30, 120, 60, 240};
    private static final double[] YAWS = {0, 4, -4, 12, -8, 2, -16};

    private StrokeBench() {}

    /** Runs it. */
    public static void main(String[] args) {
        long seed = Long.parseLong(args[0]);
        List<Read> reads = reads(seed, Integer.parseInt(args[1]));
        MomentScores moments = new MomentScores();
        for (Read r : reads) {
            String line = moments.add(r.stroke, r.truth, r.step);
            if (args.length > 2) {
                System.out.println(r.label + line);
            }
        }
        System.out.println(moments);
        System.out.println(verdicts(reads).table());
    }

    /**
     * How a cast is filmed.
     *
     * @param fps frames a second
     * @param yawDeg how far from square
     * @param exposed share of the time between frames in which each gathers light
     */
    record View(double fps, double yawDeg, double exposed) {}

    /** One cast as it was read. */
    record Read(TruthCast truth, @Nullable Stroke stroke, double step, String label) {}

    /** The casts of the grid with that seed, each filmed and erred in its own way. */
    static List<Read> reads(long seed, int count) {
        List<TraceNoise> noises = TraceNoise.measured();
        List<Scenario> deck = GridDeck.deal(seed, count);
        return IntStream.range(0, count)
                .parallel()
                .mapToObj(i -> {
                    Random random = new Random(seed * 1000 + i);
                    View view = new View(RATES[i % RATES.length], YAWS[i % YAWS.length], 1);
                    TraceNoise noise = noises.get(random.nextInt(noises.size()));
                    return read(CastFilm.of(deck.get(i)), view, noise, random.nextLong());
                })
                .toList();
    }

    static Read read(CastFilm film, View view, TraceNoise noise, long seed) {
        TruthClip truth = SimulatedTruth.of(film.seenBy(GridDeck.camera(view.fps, view.yawDeg)));
        Trace trace = NoisyFilm.of(truth, noise, 1, view.exposed, seed);
        List<Stroke> strokes = new StrokeTimer().time(trace, setup(film.scenario()), new SlowMotion(1, "given"));
        TruthCast cast = truth.casts().get(0);
        return new Read(
                cast,
                MomentScores.match(strokes, cast, 1),
                1 / view.fps,
                film.scenario().name() + " " + view.fps + " fps " + noise.clip());
    }

    static FindingScore verdicts(List<Read> reads) {
        return new FindingScore(
                reads.stream().flatMap(r -> verdicts(r).stream()).toList());
    }

    private static Setup setup(Scenario s) {
        RodSpec rod = s.rod();
        return new Setup(
                rod.lengthM(), rod.freeLengthM(), s.rig().dropM(), s.rig().massG() / 1000, null, null, List.of());
    }

    static List<FindingScore.Entry> verdicts(Read r) {
        List<FindingScore.Entry> out = new ArrayList<>();
        List<Finding> told = r.stroke == null
                ? List.of()
                : new TechniqueReview().review(r.stroke).findings();
        r.truth.faults().forEach((id, grade) -> {
            String verdict = told.stream()
                    .filter(f -> f.id().equals(id))
                    .map(f -> f.state().id())
                    .findFirst()
                    .orElse("no-cast");
            out.add(new FindingScore.Entry(r.label, id, grade, verdict));
        });
        return out;
    }
}
