package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How long the rod is from the hand that holds it to the tip. What shows of a blank begins anywhere between the fist and the butt
 * cap, so its own length was up to 14 % wrong for this on rendered clips; cut at the fist of the body that was followed beside it,
 * within 1.5 % (six clips dealt with another seed than the benchmark's).
 */
final class HeldLength {

    private static final int FEWEST = 20;

    /** Part of the blank from the grip on that gives the butt's direction. */
    private static final double BUTT_SHARE = 0.2;

    /** A fist is on the blank, or within this share of its length along it from where the grip was put. */
    private static final double OFF = 0.1;

    private static final double FARTHEST = 0.3;

    /** Share of the directions that must speak of one length: most. */
    private static final double AGREED = 0.5;

    private static final int POINTS = 25;

    private HeldLength() {}

    /** The length by all frames that show tip and hand; null where they are too few or do not agree. */
    static RodLength.@Nullable Estimate of(Trace trace, List<Grasp> grasps) {
        List<Polyline> rods = new ArrayList<>();
        double sd = 0;
        for (Grasp grasp : grasps) {
            FrameTrace frame = trace.frames().get(grasp.frame());
            Polyline blank = frame.tip().seen() ? frame.blank() : null;
            Polyline rod = blank == null ? null : fromHand(blank, grasp.hand());
            if (rod != null) {
                rods.add(rod);
                sd = Math.max(sd, grasp.sdPx());
            }
        }
        if (rods.size() < FEWEST) {
            return null;
        }
        RodLength.Estimate length = RodLength.held(rods, sd);
        return length.agreement() < AGREED ? null : length;
    }

    private static @Nullable Polyline fromHand(Polyline blank, Point hand) {
        double length = blank.length();
        Point up = blank.at(BUTT_SHARE * length).minus(blank.first());
        Point out = hand.minus(blank.first());
        double along = out.dot(up) / up.norm();
        double beside = Math.abs(up.cross(out)) / up.norm();
        return beside > OFF * length || Math.abs(along) > FARTHEST * length
                ? null
                : ToTheHand.drawn(blank, length - along, POINTS);
    }
}
