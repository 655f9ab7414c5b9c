package bendline.stroke;

import bendline.geometry.Point;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.List;

/** A trace seen in a mirror. */
final class Mirror {

    private Mirror() {}

    static Trace of(Trace t) {
        List<FrameTrace> frames = t.frames().stream()
                .map(f -> new FrameTrace(
                        f.frame(),
                        f.seconds(),
                        moved(f.grip(), t.width()),
                        moved(f.tip(), t.width()),
                        moved(f.rig(), t.width()),
                        f.blank() == null ? null : f.blank().map(p -> moved(p, t.width())),
                        f.buttAngleSd()))
                .toList();
        return new Trace(t.width(), t.height(), frames, t.motion(), t.freeLengthPx(), t.freeLengthSdPx(), t.trouble());
    }

    private static Tracked moved(Tracked t, int width) {
        Point p = t.position();
        return t.at(p == null ? null : moved(p, width));
    }

    private static Point moved(Point p, int width) {
        return new Point(width - p.x(), p.y());
    }
}
