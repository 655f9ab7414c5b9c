package bendline.analysis;

import bendline.body.BodySight;
import bendline.body.BodyTrace;
import bendline.body.Joint;
import bendline.body.JointSight;
import bendline.geometry.Point;
import bendline.trace.Grasp;
import java.util.ArrayList;
import java.util.List;

/** Where the caster's upper hand is, frame by frame. */
final class Grasps {

    /**
     * From the wrist to the middle of a fist, over the forearm. Half a hand of 0.108 over a forearm of 0.146 body heights (Winter,
     * Biomechanics and Motor Control of Human Movement, table of segment lengths; from memory) would be 0.37 for a flat hand; a bent
     * wrist on a grip and a closed fist make it less.
     */
    private static final double FIST = 0.25;

    private static final double FIST_SD = 0.12;

    private Grasps() {}

    /** The upper hand wherever its wrist and elbow were seen; not where it is not known which hand that is. */
    static List<Grasp> of(BodyTrace body) {
        List<Grasp> out = new ArrayList<>();
        for (BodySight s : body.sights()) {
            Joint wrist = body.hands().upperIn(s.frame());
            if (wrist != null && s.joint(wrist).shows() && elbow(s, wrist).shows()) {
                out.add(fist(s.frame(), s.joint(wrist), elbow(s, wrist)));
            }
        }
        return out;
    }

    private static JointSight elbow(BodySight s, Joint wrist) {
        return s.joint(wrist == Joint.LEFT_WRIST ? Joint.LEFT_ELBOW : Joint.RIGHT_ELBOW);
    }

    private static Grasp fist(int frame, JointSight wrist, JointSight elbow) {
        Point forearm = wrist.place().minus(elbow.place());
        return new Grasp(
                frame, wrist.place().plus(forearm.times(FIST)), Math.hypot(wrist.sdPx() / 2, FIST_SD * forearm.norm()));
    }
}
