package bendline.rod;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.ArrayList;
import java.util.List;

/**
 * A blank under a load, at even steps from its root at the origin to its tip. Arrays are shared, do not write to them.
 *
 * @param blank which
 * @param x metres
 * @param y metres
 * @param angle direction of the blank, radians
 * @param moment bending moment, N·m, positive where it turns the blank towards growing angles
 */
public record BlankShape(Blank blank, double[] x, double[] y, double[] angle, double[] moment) {

    /** Number of steps. */
    public int steps() {
        return x.length - 1;
    }

    /** The tip, metres from the root. */
    public Point tip() {
        return new Point(x[steps()], y[steps()]);
    }

    /** How far the tip's direction has turned from the butt's, radians. */
    public double tipTurn() {
        return angle[steps()] - angle[0];
    }

    /** Distance root to tip over the length. */
    public double chordRatio() {
        return tip().norm() / blank.lengthM();
    }

    /** Curvature at a step, 1/m. */
    public double curvature(int step) {
        return moment[step] / blank.stiffnessAt(step * blank.lengthM() / steps());
    }

    /** Energy held in the bend, joules: ∫ M²/(2·EI) ds, by Simpson's rule. */
    public double energyJ() {
        double sum = 0;
        for (int i = 0; i <= steps(); i++) {
            double weight = i == 0 || i == steps() ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * 0.5 * moment[i] * curvature(i);
        }
        return sum * blank.lengthM() / steps() / 3;
    }

    /** Where along the blank it bends: the mean place of its bend, as a share of the length from the root; NaN if straight. */
    public double bendCentre() {
        double turn = 0;
        double place = 0;
        for (int i = 0; i <= steps(); i++) {
            double c = Math.abs(curvature(i)) * (i == 0 || i == steps() ? 0.5 : 1);
            turn += c;
            place += c * i / steps();
        }
        return turn > 0 ? place / turn : Double.NaN;
    }

    /** The point at a distance along the blank, by cubic Hermite pieces. */
    public Point at(double metres) {
        double h = blank.lengthM() / steps();
        int i = Math.max(0, Math.min(steps() - 1, (int) (metres / h)));
        double u = metres / h - i;
        return new Point(
                hermite(u, x[i], x[i + 1], h * Math.cos(angle[i]), h * Math.cos(angle[i + 1])),
                hermite(u, y[i], y[i + 1], h * Math.sin(angle[i]), h * Math.sin(angle[i + 1])));
    }

    /** So many points at even steps, moved so that the root lies at a place. */
    public Polyline line(int count, Point root) {
        List<Point> out = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            out.add(at(i * blank.lengthM() / (count - 1)).plus(root));
        }
        return new Polyline(out);
    }

    private static double hermite(double u, double a, double b, double da, double db) {
        double w = 1 - u;
        return w * w * (1 + 2 * u) * a + u * u * (3 - 2 * u) * b + u * w * (w * da - u * db);
    }
}
