package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.geometry.Point;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Tracked;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.DoubleUnaryOperator;

/**
 * What was followed, frame by frame in pixels of the upright picture, with the moments and two curves of each cast: what a
 * page needs to draw it over the picture. Angles in degrees, bend in per cent; null where nothing is known.
 */
public final class FollowedJson {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final int POINTS = 17;

    private FollowedJson() {}

    /** The text of the file. */
    public static String write(ClipAnalysis analysis) {
        ObjectNode root = NODES.objectNode();
        root.put("format", "bendline-followed/1");
        root.put("width", analysis.info().width());
        root.put("height", analysis.info().height());
        root.put("slowMotionFactor", analysis.info().slowMotion().factor());
        ArrayNode times = root.putArray("times");
        analysis.info().times().forEach(t -> times.add(rounded(t, 1e6)));
        ArrayNode frames = root.putArray("frames");
        for (int i = 0; i < analysis.trace().frames().size(); i++) {
            frames.add(frame(analysis.trace().inPicture(i)));
        }
        ArrayNode casts = root.putArray("casts");
        for (CastAnalysis cast : analysis.casts()) {
            casts.add(cast(cast.stroke()));
        }
        return root.toString();
    }

    private static ObjectNode frame(FrameTrace f) {
        ObjectNode out = NODES.objectNode();
        point(out, "grip", f.grip());
        point(out, "tip", f.tip());
        point(out, "rig", f.rig());
        if (f.blank() != null) {
            ArrayNode line = out.putArray("blank");
            for (Point p : f.blank().resampled(POINTS).points()) {
                line.add(rounded(p.x(), 10)).add(rounded(p.y(), 10));
            }
        }
        return out;
    }

    private static void point(ObjectNode into, String name, Tracked t) {
        Point p = t.position();
        if (p == null || !t.seen()) {
            return;
        }
        into.putArray(name).add(rounded(p.x(), 10)).add(rounded(p.y(), 10)).add(rounded(t.sdPx(), 10));
    }

    private static ObjectNode cast(Stroke s) {
        ObjectNode out = NODES.objectNode();
        out.put("number", s.number());
        out.put("first", s.firstFrame());
        out.put("last", s.lastFrame());
        ArrayNode events = out.putArray("events");
        for (EventKind kind : EventKind.values()) {
            Event e = s.event(kind);
            if (e.seconds() != null && e.frame() != null) {
                ObjectNode n = events.addObject();
                n.put("number", EventWords.number(kind));
                n.put("id", kind.id());
                n.put("name", EventWords.name(kind));
                n.put("frame", e.frame());
                n.put("seconds", e.seconds());
                AnalysisJson.number(n, "plusMinusSeconds", e.plusMinusSeconds());
            }
        }
        Kinematics k = s.kinematics();
        out.put("from", k.firstFrame());
        out.set("butt", series(k.buttAngleRad(), Math::toDegrees));
        out.set("bend", series(k.chordRatio(), c -> 100 * (1 - c)));
        return out;
    }

    private static ArrayNode series(double[] values, DoubleUnaryOperator edge) {
        ArrayNode out = NODES.arrayNode();
        for (double v : values) {
            if (Double.isFinite(v)) {
                out.add(rounded(edge.applyAsDouble(v), 100));
            } else {
                out.addNull();
            }
        }
        return out;
    }

    private static double rounded(double v, double steps) {
        return Double.isFinite(v) ? Math.round(v * steps) / steps : 0;
    }
}
