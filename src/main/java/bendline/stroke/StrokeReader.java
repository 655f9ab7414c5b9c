package bendline.stroke;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;

/** Reads one cast out of the rod's series: smooth curves, moments, measures, each with the uncertainty that draws give. */
final class StrokeReader {

    /** Paths drawn from what the trace allows, to see how far a moment or a measure can lie off. */
    private static final int DRAWS = 40;

    /** Longest time before the forward stroke that can belong to its backswing, real seconds. */
    private static final double BEFORE_SECONDS = 10;

    private static final double AFTER_SECONDS = 2.2;

    /** What of a cast is kept before its first and after its last moment, real seconds. */
    private static final double LEAD_SECONDS = 0.5;

    private static final double TAIL_SECONDS = 2.0;

    /** How many frames beside a moment's own may stand for it. */
    private static final int NEIGHBOURS = 2;

    /** How well the hand's peak speed must be known to time the start of the push by it. */
    private static final double HAND_CONTRAST = 8;

    /**
     * By how much hands usually start before the rod turns, real seconds: 0.09 to 0.23 s on the strokes of two simulators whose
     * makers went by common practice; no measured source.
     */
    static final double HAND_LEAD_SECONDS = 0.12;

    private static final double HAND_LEAD_SD_SECONDS = 0.1;

    private final RodSeries whole;
    private final double step;
    private final Trace trace;
    private final CastPlane plane;
    private final Scale scale;
    private final Setup setup;
    private final SlowMotion slowMotion;

    /** @param scale metres in a pixel */
    StrokeReader(RodSeries whole, double step, Clip clip, Scale scale) {
        this.whole = whole;
        this.step = step;
        this.trace = clip.trace;
        this.plane = CastPlane.of(trace);
        this.scale = scale;
        this.setup = clip.setup;
        this.slowMotion = clip.slowMotion;
    }

    /** What is the same for all casts of a clip. */
    record Clip(Trace trace, Setup setup, SlowMotion slowMotion) {}

    /** One cast, of which nothing lies before {@code from} or after {@code to}, real seconds. */
    Stroke read(int number, CastFinder.Candidate turn, double from, double to, GivenMoments given) {
        int first = frameAt(Math.max(from, turn.start() - BEFORE_SECONDS));
        int last = frameAt(Math.min(to, turn.end() + AFTER_SECONDS));
        RodSeries rod = whole.slice(first, last + 1);
        StrokeTrends trends = StrokeTrends.of(rod, step);
        Curves curves = trends.curves();
        Found release = given.or(EventKind.RELEASE, release(rod, turn, curves), step);
        double loadedUntil = release.known() ? release.value() + 0.5 * step : turn.end() + 0.1;
        boolean handTimed = handIsClear(trends, turn);
        Moments.Search search = new Moments.Search(
                rod.time()[0], turn, loadedUntil, Moments.Leeway.none(handTimed ? Double.NaN : HAND_LEAD_SECONDS));
        Moments moments =
                HiddenBend.from(Moments.find(curves, search), rod, trends, step).with(given.seconds(), curves);
        Moments.Doubt doubt = new Moments.Doubt(Calibration.FITTED, rod, step, new Random(DRAWS));
        Draws draws = draws(trends, search, release, new Nominal(moments, doubt, given));
        Found nod = given.or(EventKind.CLIP_NOD, nod(first, to, release), step);
        Readings all =
                new Readings(rod, step, trends, curves, moments, handTimed, release, nod, draws, scale, trace, plane);
        Map<EventKind, Event> events = new EventBook(all, slowMotion.factor(), this::clipFrame).events();
        given.seconds().forEach((kind, at) -> events.put(kind, byHand(kind, at)));
        RodStiffness blank = BendMeasures.stiffness(all, setup);
        Bend bend = BendMeasures.bend(all, blank, first, setup.castMassKg());
        List<Measure> measures = new MeasureBook(
                        all,
                        BendMeasures.of(
                                all,
                                bend,
                                new BendReach(blank, setup.castMassKg()),
                                MeanPull.of(all, first, setup.castMassKg())),
                        BendDepth.sd(all, bend))
                .measures();
        int begin = frameAt(start(moments, turn) - LEAD_SECONDS);
        int finish = frameAt((release.known() ? release.value() : turn.end()) + TAIL_SECONDS);
        begin = Math.max(begin, first);
        finish = Math.min(finish, last);
        return new Stroke(
                number,
                rod.side(),
                trace.frames().get(begin).frame(),
                trace.frames().get(finish).frame(),
                kinematics(
                        rod,
                        trends,
                        begin - first,
                        finish + 1 - first,
                        trace.frames().get(begin).frame()),
                events,
                measures,
                bend,
                null);
    }

    private Event byHand(EventKind kind, double at) {
        int frame = trace.frames().get(frameAt(at)).frame();
        double factor = slowMotion.factor();
        return new Event(kind, at * factor, GivenMoments.sd(step) * factor, frame, GivenMoments.BASIS);
    }

    private Found release(RodSeries rod, CastFinder.Candidate turn, Curves curves) {
        ForwardTurn forward = ForwardTurn.of(curves, turn);
        Found clues = new ReleaseFinder(rod, step).find(forward.fastest(), turn.end(), curves, forward.stop(curves));
        return Calibration.FITTED.of(EventKind.RELEASE, clues, step);
    }

    /**
     * What the draws gave.
     *
     * @param moments one per draw
     * @param release one per draw, NaN where unknown
     * @param lowest when the rod is lowest after the release, one per draw
     * @param numbers one per draw
     */
    record Draws(List<Moments> moments, double[] release, double[] lowest, List<Map<Quantity, Double>> numbers) {}

    /**
     * Everything that is known of a cast before it is written down.
     *
     * @param plane in rod lengths
     */
    record Readings(
            RodSeries rod,
            double step,
            StrokeTrends trends,
            Curves curves,
            Moments moments,
            boolean handTimed,
            Found release,
            Found nod,
            Draws draws,
            Scale scale,
            Trace trace,
            CastPlane plane) {}

    private static double start(Moments m, CastFinder.Candidate turn) {
        return Double.isNaN(m.backswingStart()) ? turn.start() - 1 : m.backswingStart();
    }

    private static boolean handIsClear(StrokeTrends trends, CastFinder.Candidate turn) {
        double[] rate = trends.gripX().rates();
        double[] sd = trends.gripX().rateSds();
        double best = 0;
        double noise = Double.NaN;
        for (int i = 0; i < rate.length; i++) {
            double t = trends.gripX().times()[i];
            if (t >= turn.start() - Moments.LONGEST_HAND_LEAD_SECONDS && t <= turn.end() && rate[i] > best) {
                best = rate[i];
                noise = sd[i];
            }
        }
        return best > HAND_CONTRAST * noise;
    }

    /** What is drawn about: the moments as they are told, how far they may lie off, and those that a person gave. */
    private record Nominal(Moments moments, Moments.Doubt doubt, GivenMoments given) {}

    private Draws draws(StrokeTrends trends, Moments.Search search, Found release, Nominal nominal) {
        List<Moments> moments = new ArrayList<>();
        double[] releases = new double[DRAWS];
        double[] lowest = new double[DRAWS];
        List<Map<Quantity, Double>> numbers = new ArrayList<>();
        Random random = nominal.doubt.random();
        for (int k = 0; k < DRAWS; k++) {
            Curves c = trends.draw(10L * k + 1);
            Moments m = Moments.find(c, drawn(search, random))
                    .asFarOff(nominal.moments, nominal.doubt)
                    .with(nominal.given.drawn(step, random), c);
            releases[k] = release.value() + release.sd() * random.nextGaussian();
            lowest[k] = Numbers.lowest(c, m, releases[k]);
            moments.add(m);
            numbers.add(Numbers.of(c, m, releases[k]));
        }
        return new Draws(moments, releases, lowest, numbers);
    }

    private static Moments.Search drawn(Moments.Search s, Random random) {
        double lead = HAND_LEAD_SECONDS + HAND_LEAD_SD_SECONDS * random.nextGaussian();
        boolean handTimed = Double.isNaN(s.leeway().handLead());
        return new Moments.Search(
                s.from(),
                s.turn(),
                s.to(),
                new Moments.Leeway(
                        handTimed ? Double.NaN : Math.max(0, lead), random.nextGaussian(), random.nextGaussian()));
    }

    private Found nod(int first, double to, Found release) {
        if (!release.known()) {
            return Found.nothing("needs the moment of release");
        }
        RodSeries rest = whole.slice(first, frameAt(to) + 1);
        return Nod.find(rest, release.value());
    }

    private Kinematics kinematics(RodSeries rod, StrokeTrends trends, int from, int to, int firstFrame) {
        double[] clip = new double[to - from];
        double[] speed = new double[to - from];
        double[] metric = new double[to - from];
        boolean[] watched = rod.watched(StrokeTrends.bridge(step));
        for (int i = 0; i < clip.length; i++) {
            clip[i] = rod.time()[from + i] * slowMotion.factor();
            speed[i] = Math.hypot(trends.tipX().rates()[from + i], trends.tipY().rates()[from + i]);
            metric[i] = speed[i] * scale.metresPerPixel();
        }
        return new Kinematics(
                firstFrame,
                clip,
                Arrays.copyOfRange(rod.time(), from, to),
                seen(trends.angle().values(), watched, from, to),
                seen(trends.angle().valueSds(), watched, from, to),
                seen(trends.angle().rates(), watched, from, to),
                Arrays.copyOfRange(BendSize.chord(trends.bend()), from, to),
                Arrays.copyOfRange(BendSize.chordSd(trends.bend()), from, to),
                speed,
                metric);
    }

    /** What is drawn on through a long gap is for timing, and no measured value. */
    private static double[] seen(double[] values, boolean[] watched, int from, int to) {
        return IntStream.range(from, to)
                .mapToDouble(i -> watched[i] ? values[i] : Double.NaN)
                .toArray();
    }

    private int frameAt(double seconds) {
        int i = Arrays.binarySearch(whole.time(), seconds);
        return Math.max(0, Math.min(whole.size() - 1, i >= 0 ? i : -i - 2));
    }

    /** The decoded frame shown at a real time, or a neighbour if only that shows the blank: evidence is to be looked at. */
    private int clipFrame(double seconds) {
        int shown = frameAt(seconds + 1e-9);
        int best = shown;
        for (int i = Math.max(0, shown - NEIGHBOURS); i <= Math.min(whole.size() - 1, shown + NEIGHBOURS); i++) {
            boolean nearer = Math.abs(whole.time()[i] - seconds) < Math.abs(whole.time()[best] - seconds);
            if (followed(i) && !followed(shown) && (!followed(best) || nearer)) {
                best = i;
            }
        }
        return trace.frames().get(best).frame();
    }

    private boolean followed(int i) {
        return !Double.isNaN(whole.angle()[i]);
    }
}
