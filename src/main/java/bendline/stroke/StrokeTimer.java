package bendline.stroke;

import bendline.body.BodyTrace;
import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.signal.SmoothCurve;
import bendline.signal.Trend;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Finds the casts in a trace and times each: its moments with their uncertainty, and every measure that follows from the rod
 * and the rig alone.
 */
public final class StrokeTimer {

    /** Settling after a cast that can't be the next one's backswing, real seconds. */
    private static final double AFTER_CAST_SECONDS = 0.3;

    private static final int LEAST_FRAMES = 8;

    /**
     * The casts of a clip in order of time; none where nobody casts or no rod was found.
     *
     * @param trace rod and rig, reference pixels, clip time
     * @param setup what the user told
     * @param slowMotion clip time against real time
     */
    public List<Stroke> time(Trace trace, Setup setup, SlowMotion slowMotion) {
        return time(trace, setup, slowMotion, BodyTrace.nobody(0, "nobody was asked for"));
    }

    /** Whether the caster's height contradicts a length that was told, so that {@link #time} should be told of the body. */
    public static boolean doubts(Trace trace, Setup setup, BodyTrace body) {
        Scale told = Scale.of(trace, setup);
        return !told.against(body).equals(told);
    }

    /** The same where the caster was followed: lengths that were told are held against their height. */
    public List<Stroke> time(Trace trace, Setup setup, SlowMotion slowMotion, BodyTrace body) {
        if (!trace.foundRod() || trace.frames().size() < LEAST_FRAMES) {
            return List.of();
        }
        RodSeries right = RodSeries.of(trace, slowMotion, Side.RIGHT);
        double step = medianStep(right.time());
        Trend angle = StrokeTrends.angle(right, step);
        RodSeries best = right;
        List<CastFinder.Candidate> casts = List.of();
        for (Side side : sides(setup)) {
            RodSeries rod = side == Side.RIGHT ? right : RodSeries.of(trace, slowMotion, side);
            List<CastFinder.Candidate> found = new CastFinder(
                            rod,
                            side == Side.RIGHT ? angle.valueCurve() : mirrored(angle),
                            side == Side.RIGHT ? angle.rateCurve().negated() : angle.rateCurve(),
                            step)
                    .find();
            if (fastest(found) > fastest(casts)) {
                casts = found;
                best = rod;
            }
        }
        double[] fastest =
                casts.stream().mapToDouble(CastFinder.Candidate::fastest).toArray();
        List<GivenMoments> given = GivenMoments.of(setup.marks(), fastest, best.time(), slowMotion.factor());
        Scale scale = Scale.of(trace, setup).against(body);
        StrokeReader.Clip clip = new StrokeReader.Clip(trace, setup, slowMotion);
        return read(new StrokeReader(best, step, clip, scale), casts, best, given);
    }

    private static double fastest(List<CastFinder.Candidate> casts) {
        return casts.stream().mapToDouble(CastFinder.Candidate::peakRate).max().orElse(0);
    }

    /** The butt angle as seen by one who looks at the picture in a mirror. */
    private static SmoothCurve mirrored(Trend angle) {
        double[] v = Arrays.stream(angle.values()).map(x -> Math.PI - x).toArray();
        double[] d = Arrays.stream(angle.rates()).map(x -> -x).toArray();
        return new SmoothCurve(angle.times(), v, d);
    }

    private static List<Side> sides(Setup setup) {
        Side given = setup.castsTo();
        return given == null ? List.of(Side.RIGHT, Side.LEFT) : List.of(given);
    }

    private static List<Stroke> read(
            StrokeReader reader, List<CastFinder.Candidate> casts, RodSeries rod, List<GivenMoments> given) {
        List<Stroke> out = new ArrayList<>();
        for (int i = 0; i < casts.size(); i++) {
            double from = i == 0 ? rod.time()[0] : casts.get(i - 1).end() + AFTER_CAST_SECONDS;
            double to = i + 1 < casts.size() ? casts.get(i + 1).start() : rod.time()[rod.size() - 1];
            Stroke stroke = reader.read(
                    out.size() + 1, casts.get(i), Math.min(from, casts.get(i).start()), to, given.get(i));
            if (beginsOrEnds(stroke)) {
                out.add(stroke);
            }
        }
        return out;
    }

    /**
     * Whether the start of the backswing or the release was seen. A turn of which neither was is no more a cast than a throw or a
     * swing of something else, of which a few frames look like a rod.
     */
    private static boolean beginsOrEnds(Stroke stroke) {
        return stroke.event(EventKind.BACKSWING_START).seconds() != null
                || stroke.event(EventKind.RELEASE).seconds() != null;
    }

    private static double medianStep(double[] t) {
        double[] steps = IntStream.range(1, t.length)
                .mapToDouble(i -> t[i] - t[i - 1])
                .sorted()
                .toArray();
        return Arrays.stream(steps).skip(steps.length / 2).findFirst().orElse(1);
    }
}
