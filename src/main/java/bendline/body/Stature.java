package bendline.body;

import bendline.geometry.Point;
import java.util.Arrays;
import java.util.List;

/**
 * How tall a person would stand, from the lengths of trunk, thigh and lower leg.
 *
 * <p>Shares of the height: shoulder 0.818, hip 0.530, ankle 0.039 (Drillis and Contini 1966, quoted in Winter, Biomechanics and
 * Motor Control of Human Movement; from memory). A part that points to or from the camera looks short, so the longer of two sides
 * counts, and of all frames one of the longest.
 */
final class Stature {

    private static final double TRUNK = 0.818 - 0.530;
    private static final double LEG = 0.530 - 0.039;

    /** Frame, of those sorted by length, that counts: bent and turned ones come before it, strays after it. */
    private static final double SHARE = 0.8;

    /** How much people differ in these shares, and joints under clothes from those underneath. */
    private static final double RELATIVE_SD = 0.06;

    private Stature() {}

    /** In pixels; NaN without frames. */
    static double of(List<BodySight> sights) {
        double[] trunk = sights.stream()
                .mapToDouble(s -> middle(s, Joint.LEFT_SHOULDER).distance(middle(s, Joint.LEFT_HIP)))
                .sorted()
                .toArray();
        double[] leg = sights.stream()
                .mapToDouble(Stature::leg)
                .filter(x -> x > 0)
                .sorted()
                .toArray();
        if (trunk.length == 0) {
            return Double.NaN;
        }
        double fromTrunk = trunk[(int) (SHARE * (trunk.length - 1))] / TRUNK;
        if (leg.length < 0.3 * trunk.length) {
            return fromTrunk;
        }
        double legs = leg[(int) (SHARE * (leg.length - 1))];
        return (fromTrunk * TRUNK + legs) / (TRUNK + LEG);
    }

    static double sd(double heightPx) {
        return RELATIVE_SD * heightPx;
    }

    private static Point middle(BodySight s, Joint left) {
        return s.joint(left).place().towards(s.joint(left.other()).place(), 0.5);
    }

    /** The longer of the legs that show; 0 if none does. */
    private static double leg(BodySight s) {
        return Arrays.stream(new Joint[] {Joint.LEFT_HIP, Joint.RIGHT_HIP})
                .mapToDouble(hip -> {
                    boolean left = hip == Joint.LEFT_HIP;
                    JointSight knee = s.joint(left ? Joint.LEFT_KNEE : Joint.RIGHT_KNEE);
                    JointSight ankle = s.joint(left ? Joint.LEFT_ANKLE : Joint.RIGHT_ANKLE);
                    return knee.shows() && ankle.shows()
                            ? s.joint(hip).place().distance(knee.place())
                                    + knee.place().distance(ankle.place())
                            : 0;
                })
                .max()
                .orElse(0);
    }
}
