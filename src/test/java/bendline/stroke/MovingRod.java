package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A rod that moves by formulas, traced with errors.
 *
 * @param angle butt angle, degrees over seconds
 * @param tipTurn turn of the tip against it, degrees over seconds
 * @param gone from when on what hangs on the tip is off by a second of flight
 */
record MovingRod(DoubleUnaryOperator angle, DoubleUnaryOperator tipTurn, double gone) {

    static final double FREE_PX = 430;

    Trace trace(double fps, double seconds) {
        NoisyTrace out = new NoisyTrace(1920, 1080, 0.7, 0.03, 11);
        for (int i = 0; i < seconds * fps; i++) {
            double t = i / fps;
            Polyline blank = blank(angle.applyAsDouble(t), tipTurn.applyAsDouble(t));
            out.add(
                    t,
                    blank,
                    true,
                    blank.last().plus(t < gone ? new Point(0, 150) : new Point(800, -300)),
                    blank.first().distance(blank.last()) / FREE_PX);
        }
        return out.trace();
    }

    /** A blank whose direction turns like the square of the way along it. */
    static Polyline blank(double angle, double tipTurn) {
        List<Point> points = new ArrayList<>();
        Point p = new Point(900, 700);
        points.add(p);
        for (int i = 0; i < 40; i++) {
            double u = (i + 0.5) / 40;
            double a = Math.toRadians(angle + tipTurn * u * u);
            p = p.plus(new Point(Math.cos(a), -Math.sin(a)).times(FREE_PX / 40));
            points.add(p);
        }
        return new Polyline(points);
    }
}
