package bendline.stroke;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * Builds a trace as a tracker with errors of a known size would give it: independent errors on grip, tip and rig, a smooth one
 * of the same size on the blank between them, and frames in which nothing is seen.
 */
public final class NoisyTrace {

    private final int width;
    private final int height;
    private final double sd;
    private final double dropped;
    private final Random random;
    private final List<FrameTrace> frames = new ArrayList<>();
    private final List<Double> straightLengths = new ArrayList<>();

    /**
     * @param sd of each coordinate, pixels
     * @param dropped share of frames in which nothing is seen
     */
    public NoisyTrace(int width, int height, double sd, double dropped, long seed) {
        this.width = width;
        this.height = height;
        this.sd = sd;
        this.dropped = dropped;
        this.random = new Random(seed);
    }

    /**
     * The next frame.
     *
     * @param seconds clip time
     * @param truth the blank from grip to tip, reference pixels
     * @param tipSeen whether the tip lies in the picture
     * @param rig reference pixels, null where it is not in the picture
     * @param chordRatio to tell frames with a straight rod
     */
    public void add(double seconds, Polyline truth, boolean tipSeen, @Nullable Point rig, double chordRatio) {
        if (chordRatio > 0.999) {
            straightLengths.add(truth.length());
        }
        int i = frames.size();
        if (random.nextDouble() < dropped) {
            nothing(seconds);
            return;
        }
        Polyline blank = bent(truth, noise(sd), noise(sd), noise(sd));
        double angleSd = Math.sqrt(26) * sd / truth.length();
        Tracked tip =
                tipSeen ? Tracked.seen(blank.last(), 1.515 * sd) : Tracked.notSeen(blank.last(), "outside the picture");
        Tracked seenRig = rig == null
                ? Tracked.notSeen(null, "not in the picture")
                : Tracked.seen(rig.plus(noise(1.5 * sd)), 2.27 * sd);
        frames.add(new FrameTrace(i, seconds, Tracked.seen(blank.first(), 1.515 * sd), tip, seenRig, blank, angleSd));
    }

    /** The next frame, in which nothing is seen. */
    public void nothing(double seconds) {
        Tracked lost = Tracked.notSeen(null, "dropped on purpose");
        frames.add(new FrameTrace(frames.size(), seconds, lost, lost, lost, null, Double.NaN));
    }

    /** The trace of the frames so far. */
    public Trace trace() {
        double length = straightLengths.stream()
                .sorted()
                .skip(straightLengths.size() / 2)
                .findFirst()
                .orElse(Double.NaN);
        CameraMotion still = new CameraMotion(Collections.nCopies(frames.size(), Homography.IDENTITY), 0, true);
        return new Trace(width, height, frames, still, length, sd, null);
    }

    private Point noise(double size) {
        return new Point(size * random.nextGaussian(), size * random.nextGaussian());
    }

    /** The polyline moved by a parabola that takes the given values at its grip, middle and tip. */
    private static Polyline bent(Polyline truth, Point atGrip, Point atMiddle, Point atTip) {
        List<Point> moved = new ArrayList<>();
        for (int k = 0; k <= 24; k++) {
            double u = k / 24.0;
            Point e = atGrip.times((1 - u) * (1 - 2 * u))
                    .plus(atMiddle.times(4 * u * (1 - u)))
                    .plus(atTip.times(u * (2 * u - 1)));
            moved.add(truth.at(u * truth.length()).plus(e));
        }
        return new Polyline(moved);
    }
}
