package bendline.benchmark;

import bendline.geometry.Angles;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import org.jspecify.annotations.Nullable;

/**
 * A traced frame against the truth. Distances in pixels of the picture; NaN where one of the two is missing.
 *
 * @param frame decoded frames counted from 0
 * @param truth what is there
 * @param traced what was said, in the picture's pixels
 * @param tipError distance of the traced tip, seen or guessed, from the true one
 * @param rigError the same for the rig
 * @param gripError the same for the upper hand
 * @param blankDistance mean distance between the traced and the true blank, from the one to the other and back
 * @param chordError traced chord ratio minus the true one
 * @param buttErrorDeg traced direction at the grip minus the true one, both in the picture, degrees
 * @param cameraError how far the traced camera motion puts nine points of the picture from where they belong, mean
 */
public record FrameScore(
        int frame,
        TruthFrame truth,
        FrameTrace traced,
        double tipError,
        double rigError,
        double gripError,
        double blankDistance,
        double chordError,
        double buttErrorDeg,
        double cameraError) {

    private static final int STEPS = 50;
    private static final double BUTT_PART = 0.03;

    /** Scores one frame; {@code start} is the truth of the reference picture. */
    static FrameScore of(Trace trace, int frame, TruthFrame truth, TruthFrame start) {
        FrameTrace in = trace.inPicture(frame);
        Polyline blank = in.blank();
        return new FrameScore(
                frame,
                truth,
                in,
                distance(in.tip(), truth.tip()),
                distance(in.rig(), truth.rig()),
                distance(in.grip(), truth.grip()),
                between(blank, truth.rod(), truth.blank()),
                chord(trace, frame) - truth.chordRatio(),
                Math.toDegrees(Angles.wrap(buttDirection(blank) - buttDirection(truth.blank()))),
                cameraError(trace, frame, truth, start));
    }

    /** Traced chord ratio, from the ends of the blank and its own length; NaN where the blank was not found. */
    static double chord(Trace trace, int frame) {
        Polyline blank = trace.frames().get(frame).blank();
        return blank == null ? Double.NaN : blank.first().distance(blank.last()) / blank.length();
    }

    private static double distance(Tracked traced, @Nullable Point truth) {
        Point p = traced.position();
        return p == null || truth == null ? Double.NaN : p.distance(truth);
    }

    private static double between(@Nullable Polyline traced, @Nullable Polyline rod, @Nullable Polyline blank) {
        return traced == null || rod == null || blank == null
                ? Double.NaN
                : (meanDistance(traced, rod) + meanDistance(blank, traced)) / 2;
    }

    private static double meanDistance(Polyline from, Polyline to) {
        return from.resampled(STEPS).points().stream()
                .mapToDouble(to::distanceTo)
                .average()
                .orElse(Double.NaN);
    }

    private static double buttDirection(@Nullable Polyline blank) {
        return blank == null
                ? Double.NaN
                : blank.at(BUTT_PART * blank.length()).minus(blank.first()).angle();
    }

    private static double cameraError(Trace trace, int frame, TruthFrame truth, TruthFrame start) {
        Homography toStart = truth.camera().inverse().then(start.camera());
        double sum = 0;
        for (int i = 0; i < 9; i++) {
            Point p = new Point(trace.width() * (1 + i % 3) / 4.0, trace.height() * (1 + i / 3) / 4.0);
            Point inStart = toStart.apply(p);
            sum += trace.motion().toReference(frame, p).distance(inStart);
        }
        return sum / 9;
    }
}
