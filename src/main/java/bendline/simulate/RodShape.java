package bendline.simulate;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;

/** The smooth line of the rod through the nodes of the chain, in metres, butt cap first. */
final class RodShape {

    private static final int PARTS = 3;

    private RodShape() {}

    /**
     * Points along the rod with their distance from the upper hand: {@code [i] = {x, y, s}}; s is negative on the handle.
     * Catmull-Rom between the nodes.
     */
    static List<double[]> along(Motion.Moment m, RodSpec rod) {
        int n = m.nodeX().length - 1;
        double link = rod.freeLengthM() / n;
        double cos = Math.cos(m.angle());
        double sin = Math.sin(m.angle());
        List<double[]> out = new ArrayList<>();
        int handle = 6;
        for (int i = 0; i < handle; i++) {
            double s = -rod.handleM() * (handle - i) / handle;
            out.add(new double[] {m.handX() + s * cos, m.handY() + s * sin, s});
        }
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < PARTS; k++) {
                double u = (double) k / PARTS;
                double x = spline(
                        before(m.nodeX(), i, cos * link), m.nodeX()[i], m.nodeX()[i + 1], after(m.nodeX(), i), u);
                double y = spline(
                        before(m.nodeY(), i, sin * link), m.nodeY()[i], m.nodeY()[i + 1], after(m.nodeY(), i), u);
                out.add(new double[] {x, y, (i + u) * link});
            }
        }
        out.add(new double[] {m.tipX(), m.tipY(), rod.freeLengthM()});
        return out;
    }

    /** Points at equal steps of the rod's length, butt cap and tip included. */
    static List<Point> even(List<double[]> along, int count) {
        double first = along.get(0)[2];
        double last = along.get(along.size() - 1)[2];
        List<Point> out = new ArrayList<>(count);
        int piece = 0;
        for (int i = 0; i < count; i++) {
            double s = first + (last - first) * i / (count - 1);
            while (piece < along.size() - 2 && along.get(piece + 1)[2] < s) {
                piece++;
            }
            double[] a = along.get(piece);
            double[] b = along.get(piece + 1);
            double f = Math.min(1, (s - a[2]) / (b[2] - a[2]));
            out.add(new Point(a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1])));
        }
        return out;
    }

    private static double before(double[] v, int i, double handleStep) {
        return i == 0 ? v[0] - handleStep : v[i - 1];
    }

    private static double after(double[] v, int i) {
        return i + 2 < v.length ? v[i + 2] : 2 * v[i + 1] - v[i];
    }

    private static double spline(double a, double b, double c, double d, double u) {
        return b + 0.5 * u * (c - a + u * (2 * a - 5 * b + 4 * c - d + u * (3 * (b - c) + d - a)));
    }
}
