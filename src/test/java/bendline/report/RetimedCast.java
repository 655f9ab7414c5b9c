package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.footage.ClipInfo;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.stroke.Bend;
import bendline.stroke.BendArc;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The cast of formulas as if another clip showed it: at that clip's frames and in its size, each frame with what the formulas'
 * clip has nearest. It begins with the clip and takes as long as it takes, or the whole clip where that is shorter.
 */
final class RetimedCast {

    private final ClipAnalysis cast;
    private final ClipInfo info;
    private final double squeeze;
    private final double scale;

    private RetimedCast(ClipAnalysis cast, ClipInfo info) {
        this.cast = cast;
        this.info = info;
        this.squeeze = Math.max(1, AnalyticCast.FRAMES / AnalyticCast.RATE / info.durationSeconds());
        this.scale = info.width() / (double) AnalyticCast.WIDTH;
    }

    static ClipAnalysis on(Path clip, ClipInfo info) {
        return new RetimedCast(AnalyticCast.analysis(clip), info).analysis();
    }

    private ClipAnalysis analysis() {
        List<FrameTrace> frames =
                IntStream.range(0, info.frames()).mapToObj(this::frame).toList();
        CameraMotion still = new CameraMotion(Collections.nCopies(frames.size(), Homography.IDENTITY), 0.2, true);
        Trace trace = new Trace(info.width(), info.height(), frames, still, scale * AnalyticCast.FREE_PX, 1.5, null);
        CastAnalysis only = cast.casts().get(0);
        CastAnalysis retimed = new CastAnalysis(stroke(only.stroke()), only.review());
        return new ClipAnalysis(cast.clip(), info, cast.setup(), trace, cast.quality(), List.of(retimed));
    }

    /** The formulas' frame that is nearest to one of the clip. */
    private int source(int frame) {
        long nearest = Math.round(info.times().get(frame) * squeeze * AnalyticCast.RATE);
        return (int) Math.min(AnalyticCast.FRAMES - 1, nearest);
    }

    private FrameTrace frame(int i) {
        FrameTrace f = cast.trace().frames().get(source(i));
        Polyline blank = f.blank() == null ? null : f.blank().map(p -> p.times(scale));
        return new FrameTrace(
                i, info.times().get(i), scaled(f.grip()), scaled(f.tip()), scaled(f.rig()), blank, f.buttAngleSd());
    }

    private Tracked scaled(Tracked t) {
        Point p = t.position();
        return t.at(p == null ? null : p.times(scale));
    }

    private Stroke stroke(Stroke s) {
        int[] frames = IntStream.range(0, info.frames())
                .filter(i -> source(i) >= s.firstFrame() && source(i) <= s.lastFrame())
                .toArray();
        Kinematics k = s.kinematics();
        double[] seconds =
                IntStream.of(frames).mapToDouble(i -> info.times().get(i)).toArray();
        Kinematics retimed = new Kinematics(
                frames[0],
                seconds,
                seconds,
                at(frames, k, k.buttAngleRad()),
                at(frames, k, k.buttAngleSd()),
                at(frames, k, k.buttRate()),
                at(frames, k, k.chordRatio()),
                at(frames, k, k.chordRatioSd()),
                at(frames, k, k.tipSpeedPx()),
                at(frames, k, k.tipSpeed()));
        return new Stroke(
                s.number(),
                s.castsTo(),
                frames[0],
                frames[frames.length - 1],
                retimed,
                events(s),
                s.measures(),
                bend(s.bend()),
                null);
    }

    private double[] at(int[] frames, Kinematics k, double[] series) {
        return IntStream.of(frames)
                .mapToDouble(i -> series[source(i) - k.firstFrame()])
                .toArray();
    }

    private Map<EventKind, Event> events(Stroke s) {
        Map<EventKind, Event> out = new EnumMap<>(EventKind.class);
        s.events().forEach((kind, e) -> out.put(kind, retimed(e)));
        return out;
    }

    private Event retimed(Event e) {
        if (e.seconds() == null) {
            return e;
        }
        double seconds = e.seconds() / squeeze;
        return new Event(e.kind(), seconds, e.plusMinusSeconds() / squeeze, info.frameAt(seconds), e.basis());
    }

    private Bend bend(Bend b) {
        List<BendArc> arcs = new ArrayList<>();
        for (int i = 0; i < info.frames(); i++) {
            double t = info.times().get(i);
            int frame = i;
            b.arcs().stream()
                    .filter(a -> a.frame() == source(frame))
                    .map(a -> new BendArc(frame, t, t, a.line(), a.sd(), a.whole(), a.rig()))
                    .forEach(arcs::add);
        }
        return new Bend(arcs, b.metric(), b.view(), b.load());
    }
}
