package bendline.report;

import bendline.geometry.Point;
import bendline.stroke.Event;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.awt.Rectangle;
import java.util.Collection;
import java.util.Objects;
import java.util.stream.Stream;

/** The part of the picture that holds the angler and the rod at every shown moment of a cast, so that stills compare. */
final class Crop {

    /** The angler under and behind the hands, in lengths of the blank from hand to tip. */
    private static final double BELOW = 0.5;

    private static final double ASIDE = 0.18;
    private static final double ABOVE = 0.1;

    private Crop() {}

    /** Around every blank, tip and hand of some frames, inside the picture. */
    static Rectangle around(Trace trace, Collection<Integer> frames) {
        double l = Double.isFinite(trace.freeLengthPx()) ? trace.freeLengthPx() : 0;
        double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        for (int frame : frames) {
            FrameTrace f = trace.inPicture(frame);
            points(f).forEach(p -> include(box, p, ASIDE * l, ABOVE * l, ABOVE * l));
            Point grip = f.grip().position();
            if (grip != null) {
                include(box, grip, ASIDE * l, 0, BELOW * l);
            }
        }
        Rectangle whole = new Rectangle(0, 0, trace.width(), trace.height());
        if (box[0] > box[2]) {
            return whole;
        }
        Rectangle wanted = new Rectangle(
                (int) Math.floor(box[0]), (int) Math.floor(box[1]), (int) Math.ceil(box[2] - box[0]), (int)
                        Math.ceil(box[3] - box[1]));
        Rectangle inside = wanted.intersection(whole);
        return inside.width < 16 || inside.height < 16 ? whole : inside;
    }

    /** Frames of the known moments of a cast. */
    static Collection<Integer> eventFrames(Stroke stroke) {
        return stroke.events().values().stream()
                .map(Event::frame)
                .filter(Objects::nonNull)
                .distinct()
                .sorted()
                .toList();
    }

    private static Stream<Point> points(FrameTrace f) {
        Stream<Point> blank = f.blank() == null ? Stream.of() : f.blank().points().stream();
        Stream<Point> ends = Stream.of(f.grip(), f.tip()).map(t -> t.position()).filter(Objects::nonNull);
        return Stream.concat(blank, ends);
    }

    private static void include(double[] box, Point p, double aside, double above, double below) {
        box[0] = Math.min(box[0], p.x() - aside);
        box[1] = Math.min(box[1], p.y() - above);
        box[2] = Math.max(box[2], p.x() + aside);
        box[3] = Math.max(box[3], p.y() + below);
    }
}
