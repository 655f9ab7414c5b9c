package bendline.stroke;

import bendline.body.BodySight;
import bendline.body.BodyTrace;
import bendline.body.Joint;
import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.scene.Setup;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reads what the caster's body did in a cast: heights of the hands, the lower hand's pull, and when each link of the chain is
 * fastest.
 *
 * <p>All of it is seen from the side: what goes to or from the camera is not measured, so turns of hips and shoulders are told as
 * moments and never as degrees. Heights and ways carry the uncertainty of single joints, which is a few hundredths of the
 * person's height; times carry what the scatter from frame to frame allows and half a frame besides.
 */
public final class BodyReader {

    /** What this class tells. */
    static final List<Quantity> TOLD = List.of(
            Quantity.HAND_BELOW_HEAD,
            Quantity.HAND_AT_SHOULDER,
            Quantity.RELEASE_HAND_HEAD,
            Quantity.RELEASE_HAND_SHOULDER,
            Quantity.PULL_LENGTH,
            Quantity.PULL_SPEED,
            Quantity.PULL_AFTER_PUSH,
            Quantity.HIPS_BEFORE_HAND,
            Quantity.SHOULDERS_BEFORE_HAND,
            Quantity.HAND_BEFORE_BUTT,
            Quantity.PEAK_ORDER,
            Quantity.HIP_TURN,
            Quantity.SHOULDER_TURN,
            Quantity.STEP_LENGTH,
            Quantity.WEIGHT_SHIFT,
            Quantity.HANDS_APART);

    private static final int FEWEST = 12;

    /** The body may move before the rod does and a little after the line is gone, real seconds. */
    private static final double BEFORE_SECONDS = 0.3;

    private static final double AFTER_SECONDS = 0.08;

    private final Trace trace;
    private final Setup setup;
    private final SlowMotion slowMotion;

    /**
     * @param trace rod and rig
     * @param setup what the user told
     * @param slowMotion clip time against real time
     */
    public BodyReader(Trace trace, Setup setup, SlowMotion slowMotion) {
        this.trace = trace;
        this.setup = setup;
        this.slowMotion = slowMotion;
    }

    /** A stroke with what the body did. */
    public Stroke read(Stroke stroke, BodyTrace body) {
        BodySeries series = BodySeries.of(body, stroke, slowMotion.factor());
        String why = why(stroke, body, series);
        if (why != null) {
            List<Peak> none = new ArrayList<>();
            for (BodyPart part : BodyPart.values()) {
                none.add(Peak.unknown(part, why));
            }
            BodyMotion nothing = new BodyMotion(none, body.hands(), series.size(), why);
            return stroke.with(nothing, TOLD.stream().map(q -> q.unknown(why)).toList());
        }
        Span span = new Span(
                time(stroke, EventKind.FORWARD_START),
                time(stroke, EventKind.RELEASE),
                new PeakFinder(
                        time(stroke, EventKind.FORWARD_START) - BEFORE_SECONDS,
                        time(stroke, EventKind.RELEASE) + AFTER_SECONDS,
                        series.step()));
        Trends trends = Trends.of(series, body);
        BodyScale scale = BodyScale.of(Scale.of(trace, setup).against(body), body);
        Map<Quantity, Measure> out = new EnumMap<>(Quantity.class);
        new HandMeasures(series, body, trends, span, scale).into(out);
        List<Peak> peaks = new ChainReader(stroke, slowMotion.factor(), trends, span).peaks(out);
        new StanceMeasures(series, trends, span, scale).into(out);
        String note =
                "followed in " + series.size() + " frames; " + body.hands().basis();
        return stroke.with(
                new BodyMotion(peaks, body.hands(), series.size(), note),
                TOLD.stream().map(out::get).toList());
    }

    private static @Nullable String why(Stroke stroke, BodyTrace body, BodySeries series) {
        if (body.trouble() != null) {
            return body.trouble();
        }
        if (stroke.event(EventKind.FORWARD_START).seconds() == null
                || stroke.event(EventKind.RELEASE).seconds() == null) {
            return "needs the forward start and the release";
        }
        if (series.size() < FEWEST) {
            return "the body was followed in " + series.size() + " frames of the cast only";
        }
        return body.hands().known() ? null : body.hands().basis();
    }

    private double time(Stroke stroke, EventKind kind) {
        Double clip = stroke.event(kind).seconds();
        return clip == null ? Double.NaN : clip / slowMotion.factor();
    }

    /**
     * Where in time to look.
     *
     * @param start forward start, real seconds
     * @param release real seconds
     * @param peaks finds fastest moments there
     */
    record Span(double start, double release, PeakFinder peaks) {}

    /**
     * The smoothed series that everything is read from; reference pixels, forward and up.
     *
     * @param handX upper hand, forward
     * @param aboveHead upper hand above the nose
     * @param aboveShoulders upper hand above the middle of the shoulders
     * @param toChest lower hand's distance from the chest
     * @param hipX middle of the hips, forward
     * @param shoulderX middle of the shoulders, forward
     * @param hipTurn how far the hip of the upper hand's side is in front of the other
     * @param shoulderTurn the same for the shoulders
     */
    record Trends(
            BodyTrend handX,
            BodyTrend aboveHead,
            BodyTrend aboveShoulders,
            BodyTrend toChest,
            BodyTrend hipX,
            BodyTrend shoulderX,
            BodyTrend hipTurn,
            BodyTrend shoulderTurn) {

        /** The chest between shoulders and hips, from the shoulders down: about the breastbone's middle. */
        private static final double CHEST = 0.3;

        /** Joints err by themselves: the middle of two errs less, their difference more, than one. */
        private static final double HALF = 1 / Math.sqrt(2);

        private static final double TWO = Math.sqrt(2);

        /** A wrist, and a chest between four joints, 0.7 of it the two shoulders'. */
        private static final double TO_CHEST = Math.sqrt(1 + 0.5 * (0.7 * 0.7 + 0.3 * 0.3));

        static Trends of(BodySeries s, BodyTrace body) {
            Joint upper = body.hands().upper() == Joint.LEFT_WRIST ? Joint.LEFT_WRIST : Joint.RIGHT_WRIST;
            Joint lower = upper.other();
            boolean left = upper == Joint.LEFT_WRIST;
            Joint hip = left ? Joint.LEFT_HIP : Joint.RIGHT_HIP;
            Joint shoulder = left ? Joint.LEFT_SHOULDER : Joint.RIGHT_SHOULDER;
            return new Trends(
                    s.trend(upper, 1, b -> s.x(b, upper)),
                    s.trend(upper, TWO, b -> BodySeries.y(b, upper) - BodySeries.y(b, Joint.NOSE)),
                    s.trend(
                            upper,
                            TWO,
                            b -> BodySeries.y(b, upper) - s.middle(b, shoulder).y()),
                    s.trend(lower, TO_CHEST, b -> toChest(s, b, lower)),
                    s.trend(hip, HALF, b -> s.middle(b, hip).x()),
                    s.trend(shoulder, HALF, b -> s.middle(b, shoulder).x()),
                    s.trend(hip, TWO, b -> s.x(b, hip) - s.x(b, hip.other())),
                    s.trend(shoulder, TWO, b -> s.x(b, shoulder) - s.x(b, shoulder.other())));
        }

        private static double toChest(BodySeries s, BodySight b, Joint wrist) {
            Point shoulders = s.middle(b, Joint.LEFT_SHOULDER);
            Point chest = shoulders.towards(s.middle(b, Joint.LEFT_HIP), CHEST);
            return Math.hypot(s.x(b, wrist) - chest.x(), BodySeries.y(b, wrist) - chest.y());
        }
    }
}
