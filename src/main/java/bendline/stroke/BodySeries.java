package bendline.stroke;

import bendline.body.BodySight;
import bendline.body.BodyTrace;
import bendline.body.Joint;
import bendline.body.JointSight;
import bendline.geometry.Point;
import bendline.scene.Setup.Side;
import bendline.signal.Scatter;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Series of a body through one cast, in the sense of a cast to one side: x forward, y up, reference pixels, real time. Holds only
 * frames in which the body was seen.
 *
 * @param sights in order of time
 * @param time real seconds
 * @param sign 1 where forward is to the right, else −1
 * @param step usual step between frames, real seconds
 */
record BodySeries(List<BodySight> sights, double[] time, double sign, double step) {

    /** What a joint's place can be trusted to from frame to frame at best, share of its radius. */
    private static final double LEAST_SCATTER = 0.06;

    /**
     * Share of its radius by which a coordinate of a joint wanders within a tenth of a second; on the three sample clips 0.37, 0.41 and
     * 0.81.
     */
    private static final double WANDER = 0.5;

    static BodySeries of(BodyTrace body, Stroke stroke, double slowMotion) {
        List<BodySight> sights = body.sights().stream()
                .filter(s -> s.frame() >= stroke.firstFrame() && s.frame() <= stroke.lastFrame())
                .toList();
        double[] time =
                sights.stream().mapToDouble(s -> s.seconds() / slowMotion).toArray();
        double[] steps = new double[Math.max(0, time.length - 1)];
        Arrays.setAll(steps, i -> time[i + 1] - time[i]);
        Arrays.sort(steps);
        // The forward stroke is looked at in every frame, the rest perhaps not: the smaller steps are the clip's own.
        double step = steps.length == 0 ? Double.NaN : steps[steps.length / 10];
        return new BodySeries(sights, time, stroke.castsTo() == Side.RIGHT ? 1 : -1, step);
    }

    int size() {
        return time.length;
    }

    /** Forward, pixels. */
    double x(BodySight s, Joint j) {
        return sign * s.joint(j).place().x();
    }

    /** Up, pixels. */
    static double y(BodySight s, Joint j) {
        return -s.joint(j).place().y();
    }

    /** The middle between a joint and its like on the other side; forward and up. */
    Point middle(BodySight s, Joint j) {
        return new Point(0.5 * (x(s, j) + x(s, j.other())), 0.5 * (y(s, j) + y(s, j.other())));
    }

    /** Share of the frames between two real times in which a joint shows. */
    double shown(Joint j, double from, double to) {
        int all = 0;
        int seen = 0;
        for (int i = 0; i < time.length; i++) {
            if (time[i] >= from && time[i] <= to) {
                all++;
                seen += sights.get(i).joint(j).shows() ? 1 : 0;
            }
        }
        return all == 0 ? 0 : (double) seen / all;
    }

    /**
     * A number of each frame, smoothed; its scatter from frame to frame is read off the series itself.
     *
     * @param like a joint that errs as those do from which the number is made
     * @param joints how much more it errs than one coordinate of one joint
     */
    BodyTrend trend(Joint like, double joints, ToDoubleFunction<BodySight> number) {
        double[] raw = sights.stream().mapToDouble(number).toArray();
        double least = sights.stream()
                .map(s -> s.joint(like))
                .mapToDouble(JointSight::sdPx)
                .min()
                .orElse(1);
        int stride = (int) Math.max(1, Math.round(0.05 / step));
        double scatter = Math.max(LEAST_SCATTER * least, Math.max(safe(raw, 1), safe(raw, stride)));
        double[] sd = new double[raw.length];
        Arrays.fill(sd, scatter);
        return new BodyTrend(StrokeTrends.smoother(step).smooth(time, raw, sd), WANDER * least * joints);
    }

    private static double safe(double[] raw, int stride) {
        double s = Scatter.of(raw, stride);
        return Double.isNaN(s) ? 0 : s;
    }
}
