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
 * Reads the strokes of simulated casts from traces with the tracker's measured errors, no picture in between: hundreds of casts in
 * a minute. {@code StrokeBench SEED COUNT}.
 */
public final class StrokeBench {

    private static final double[] RATES = {60, 30, 120, 60, 240};
    private static final double[] YAWS = {0, 4, -4, 12, -8, 2, -16};

    private StrokeBench() {}

    /** Runs it. */
    public static void main(String[] args) {
        long seed = Long.parseLong(args[0]);
        List<CastFilm> films = GridDeck.films(GridDeck.deal(seed, Integer.parseInt(args[1])));
        Result r = run(films, seed, args.length > 2);
        System.out.println(r.moments);
        System.out.println(r.findings.table());
    }

    /** What came out. */
    record Result(MomentScores moments, FindingScore findings) {}

    /** One cast as it was read. */
    record Read(TruthCast truth, @Nullable Stroke stroke, double step, String label) {}

    static Result run(List<CastFilm> films, long seed, boolean each) {
        List<TraceNoise> noises = TraceNoise.measured();
        List<Read> reads = IntStream.range(0, films.size())
                .parallel()
                .mapToObj(i -> {
                    Random random = new Random(seed * 1000 + i);
                    double fps = RATES[i % RATES.length];
                    double yaw = YAWS[i % YAWS.length];
                    TraceNoise noise = noises.get(random.nextInt(noises.size()));
                    return read(films.get(i), fps, yaw, noise, random.nextLong());
                })
                .toList();
        MomentScores moments = new MomentScores();
        List<FindingScore.Entry> verdicts = new ArrayList<>();
        for (Read r : reads) {
            String line = moments.add(r.stroke, r.truth, r.step);
            if (each) {
                System.out.println(r.label + line);
            }
            verdicts.addAll(verdicts(r));
        }
        return new Result(moments, new FindingScore(verdicts));
    }

    static Read read(CastFilm film, double fps, double yaw, TraceNoise noise, long seed) {
        TruthClip truth = SimulatedTruth.of(film.seenBy(GridDeck.camera(fps, yaw)));
        Trace trace = NoisyFilm.of(truth, noise, 1, seed);
        List<Stroke> strokes = new StrokeTimer().time(trace, setup(film.scenario()), new SlowMotion(1, "given"));
        TruthCast cast = truth.casts().get(0);
        Stroke stroke = MomentScores.match(strokes, cast, 1);
        return new Read(cast, stroke, 1 / fps, film.scenario().name() + " " + fps + " fps " + noise.clip());
    }

    private static Setup setup(Scenario s) {
        RodSpec rod = s.rod();
        return new Setup(
                rod.lengthM(),
                rod.freeLengthM(),
                s.rig().dropM(),
                s.rig().massG() / 1000,
                null,
                null,
                List.of());
    }

    static List<FindingScore.Entry> verdicts(Read r) {
        List<FindingScore.Entry> out = new ArrayList<>();
        List<Finding> told =
                r.stroke == null ? List.of() : new TechniqueReview().review(r.stroke).findings();
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
