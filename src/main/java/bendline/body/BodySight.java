package bendline.body;

import java.util.Map;

/**
 * The caster's body in one frame.
 *
 * @param frame decoded frames counted from 0
 * @param seconds clip time
 * @param person likelihood that somebody stands there, 0 to 1
 * @param joints every joint, seen or guessed
 */
public record BodySight(int frame, double seconds, double person, Map<Joint, JointSight> joints) {

    /** Copies the map. */
    public BodySight {
        joints = Map.copyOf(joints);
    }

    /** A joint; all are there. */
    public JointSight joint(Joint j) {
        JointSight sight = joints.get(j);
        if (sight == null) {
            throw new IllegalArgumentException("no joint " + j.id() + " in frame " + frame);
        }
        return sight;
    }
}
