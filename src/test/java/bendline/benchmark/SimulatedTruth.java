package bendline.benchmark;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.simulate.Truth;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The truth beside clips of {@code bendline.simulate}, in the form that scores use. */
public final class SimulatedTruth {

    private SimulatedTruth() {}

    /** The same truth. */
    public static TruthClip of(Truth truth) {
        return new TruthClip(
                truth.scenario().name(),
                truth.clip().width(),
                truth.clip().height(),
                truth.frames().stream().map(SimulatedTruth::frame).toList(),
                truth.casts().stream().map(c -> cast(c, frameSeconds(truth))).toList());
    }

    /** The true one of what is measured as the largest pull: its mean over the time that the clip's frames can show. */
    public static double peakPullN(Truth.Cast cast, Truth truth) {
        return cast.measures().getOrDefault(pullName(frameSeconds(truth)), Double.NaN);
    }

    private static String pullName(double frameSeconds) {
        return frameSeconds > 0.02 ? "peakMeanLinePull67msN" : "peakMeanLinePull40msN";
    }

    /** Real time from one frame to the next. */
    private static double frameSeconds(Truth truth) {
        return 1 / truth.scenario().camera().captureFps();
    }

    private static TruthCast cast(Truth.Cast cast, double frameSeconds) {
        Map<String, String> faults = new HashMap<>();
        cast.faults().forEach((id, grade) -> faults.put(id, grade.name().toLowerCase(Locale.ROOT)));
        return new TruthCast(
                cast.events(),
                faults,
                cast.measures().getOrDefault("launchSpeedMps", Double.NaN),
                cast.measures().getOrDefault("launchAngleDeg", Double.NaN),
                cast.measures().getOrDefault(pullName(frameSeconds), Double.NaN),
                cast.measures().getOrDefault("peakElasticJ", Double.NaN));
    }

    private static TruthFrame frame(Truth.Frame f) {
        List<Point> points = f.blank();
        Point grip = f.grip();
        Polyline rod = points == null ? null : SmoothCurve.through(points);
        return new TruthFrame(
                f.seconds(),
                f.tip(),
                f.tipInFrame(),
                f.rig(),
                f.rigVisible(),
                f.rigHeld(),
                grip,
                rod,
                rod == null || grip == null ? null : SmoothCurve.from(rod, grip),
                orNaN(f.buttAngleDeg()),
                orNaN(f.chordRatio()),
                f.stillToPicture());
    }

    private static double orNaN(@Nullable Double value) {
        return value == null ? Double.NaN : value;
    }
}
