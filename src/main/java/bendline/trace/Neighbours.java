package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the blank should be in a frame, going by the frames around it: a local quadratic in time through each of a few
 * points along the rod.
 */
final class Neighbours {

    private static final int POINTS = 12;
    /** Frames to either side that are asked. */
    private static final int SPAN = 5;
    /** A longer gap than this is not bridged, seconds of clip time or frames, whichever is longer. */
    private static final double LONGEST_GAP_SECONDS = 0.35;

    private static final int LONGEST_GAP_FRAMES = 12;

    private Neighbours() {}

    /**
     * @param line predicted centre line
     * @param stepPx mean displacement from frame to frame near there, which limits how much may be asked of it
     */
    record Prediction(Polyline line, double stepPx) {}

    /** @return null where too few frames near show the blank */
    static @Nullable Prediction at(int t, List<Look> looks) {
        List<Integer> used = new ArrayList<>();
        double now = looks.get(t).seconds();
        gather(t, -1, looks, used);
        int before = used.size();
        gather(t, 1, looks, used);
        boolean bothSides = before > 0 && used.size() > before;
        if (used.size() < 3 || !bothSides && used.size() < 4) {
            return null;
        }
        List<Point> points = new ArrayList<>(POINTS);
        for (int k = 0; k < POINTS; k++) {
            double f = k / (POINTS - 1.0);
            points.add(predicted(used, looks, now, f, bothSides));
        }
        return new Prediction(new Polyline(points), step(used, looks));
    }

    private static void gather(int t, int direction, List<Look> looks, List<Integer> used) {
        int found = 0;
        double now = looks.get(t).seconds();
        for (int i = t + direction; i >= 0 && i < looks.size() && found < SPAN; i += direction) {
            boolean far = Math.abs(looks.get(i).seconds() - now) > LONGEST_GAP_SECONDS
                    && Math.abs(i - t) > LONGEST_GAP_FRAMES;
            if (far) {
                return;
            }
            if (looks.get(i).chosen() != null) {
                used.add(i);
                found++;
            }
        }
    }

    private static double step(List<Integer> used, List<Look> looks) {
        double sum = 0;
        int n = 0;
        for (int a : used) {
            int b = a + 1;
            if (b < looks.size()
                    && looks.get(a).chosen() != null
                    && looks.get(b).chosen() != null) {
                sum += PathChooser.displacement(
                        looks.get(a).chosen().line(), looks.get(b).chosen().line());
                n++;
            }
        }
        return n == 0 ? 0 : sum / n;
    }

    private static Point predicted(List<Integer> used, List<Look> looks, double now, double f, boolean curved) {
        double reach = 0;
        for (int i : used) {
            reach = Math.max(reach, Math.abs(looks.get(i).seconds() - now));
        }
        double[][] normal = new double[3][3];
        double[] rx = new double[3];
        double[] ry = new double[3];
        for (int i : used) {
            Polyline line = looks.get(i).chosen().line();
            Point p = line.at(f * line.length());
            double u = (looks.get(i).seconds() - now) / (reach + 1e-9);
            double w = Math.pow(1 - Math.pow(0.9 * Math.abs(u), 3), 3);
            double[] b = {1, u, curved && used.size() >= 5 ? u * u : 0};
            for (int a = 0; a < 3; a++) {
                rx[a] += w * b[a] * p.x();
                ry[a] += w * b[a] * p.y();
                for (int c = 0; c < 3; c++) {
                    normal[a][c] += w * b[a] * b[c];
                }
            }
        }
        for (int a = 0; a < 3; a++) {
            normal[a][a] += 1e-6;
        }
        var solver = new org.apache.commons.math3.linear.LUDecomposition(
                        new org.apache.commons.math3.linear.Array2DRowRealMatrix(normal))
                .getSolver();
        double x = solver.solve(new org.apache.commons.math3.linear.ArrayRealVector(rx))
                .getEntry(0);
        double y = solver.solve(new org.apache.commons.math3.linear.ArrayRealVector(ry))
                .getEntry(0);
        return new Point(x, y);
    }
}
