package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.Trace;
import java.util.List;
import java.util.function.DoubleFunction;

/** A rod that waits with its rig hanging from it. */
public final class HangingRig {

    /** Scale of the pictures. */
    public static final double PX_PER_M = 130;

    /** Hand to tip, metres. */
    public static final double FREE_M = 3.1;

    /** A tip that does not move. */
    public static final DoubleFunction<Point> STILL = t -> new Point(0, 0);

    private HangingRig() {}

    /** A rod that rests at 60°, its tip and its rig where two functions of real time put them, played slower than life. */
    public static Trace trace(
            double fps, double factor, double seconds, DoubleFunction<Point> tipShift, DoubleFunction<Point> fromTip) {
        NoisyTrace out = new NoisyTrace(1920, 1080, 0.6, 0.02, 7);
        Point grip = new Point(600, 700);
        for (int i = 0; i < seconds * fps; i++) {
            double t = i / fps;
            Point straight = Point.direction(Math.toRadians(-60)).times(FREE_M * PX_PER_M);
            Polyline blank = new Polyline(List.of(
                    grip, grip.plus(straight.times(0.5)), grip.plus(straight).plus(tipShift.apply(t))));
            out.add(t * factor, blank, true, blank.last().plus(fromTip.apply(t)), 1);
        }
        return out.trace();
    }

    /** A pendulum of so many metres that swings so far to either side, from the tip. */
    public static DoubleFunction<Point> swinging(double dropM, double degrees) {
        double omega = Math.sqrt(Gravity.STANDARD / dropM);
        return t -> {
            double angle = Math.toRadians(degrees) * Math.cos(omega * t + 0.4);
            return new Point(Math.sin(angle), Math.cos(angle)).times(dropM * PX_PER_M);
        };
    }
}
