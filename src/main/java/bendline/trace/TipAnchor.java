package bendline.trace;

import bendline.geometry.Point;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * The rod has one length and the hands move smoothly. So the point a fixed length inside the tip must move smoothly too;
 * where it jumps along the rod, the tip was cut short by a background of its own colour or drawn out by the line, and is
 * put back where hands and length say.
 */
final class TipAnchor {

    /** Frames to either side that say where the hands are. */
    private static final int SPAN = 8;

    private static final int FEWEST = 5;
    /** Jumps below this are what measuring the end costs anyway, pixels. */
    private static final double SMALL_PX = 3;

    private TipAnchor() {}

    /** The same looks with tips put right where they were out of line. */
    static List<Look> steadied(List<Look> looks, RodLength.Estimate rod) {
        int n = looks.size();
        Point[] anchor = new Point[n];
        Point[] along = new Point[n];
        for (int t = 0; t < n; t++) {
            Fit fit = looks.get(t).chosen();
            if (fit != null) {
                double s = fit.line().length() + fit.hiddenPx() - rod.along(fit.line());
                anchor[t] = fit.line().at(s);
                along[t] = fit.line().tangentAt(Math.max(0, s));
            }
        }
        List<Look> out = new ArrayList<>(n);
        for (int t = 0; t < n; t++) {
            Fit fit = looks.get(t).chosen();
            out.add(
                    fit == null || fit.hiddenPx() > 0
                            ? looks.get(t)
                            : looks.get(t).with(moved(fit, t, looks, anchor, along)));
        }
        return out;
    }

    private static Fit moved(Fit fit, int t, List<Look> looks, Point[] anchor, Point[] along) {
        List<Integer> near = new ArrayList<>();
        for (int i = Math.max(0, t - SPAN); i <= Math.min(anchor.length - 1, t + SPAN); i++) {
            if (anchor[i] != null) {
                near.add(i);
            }
        }
        if (near.size() < FEWEST) {
            return fit;
        }
        double[] residual = new double[near.size()];
        Point smooth = smooth(t, near, looks, anchor, along, residual);
        double[] sizes = Arrays.stream(residual).map(Math::abs).sorted().toArray();
        double scatter = Math.max(0.7, 1.4826 * sizes[sizes.length / 2]);
        double off = anchor[t].minus(smooth).dot(along[t]);
        double allowed = Math.max(SMALL_PX, 3 * scatter);
        double anchorSd = Math.max(1, scatter);
        if (Math.abs(off) <= allowed) {
            return fit.withTip(fit.line(), Math.min(fit.alongSdPx(), Math.max(fit.alongSdPx() / 2, anchorSd)));
        }
        double to = fit.line().length() - off;
        if (to < 0.3 * fit.line().length()) {
            return fit;
        }
        return fit.withTip(fit.line().cut(to), 1.5 * anchorSd + 0.05 * Math.abs(off));
    }

    /** Robust local quadratic of the anchors in time, outliers judged along the rod only. */
    private static Point smooth(
            int t, List<Integer> near, List<Look> looks, Point[] anchor, Point[] along, double[] residual) {
        double now = looks.get(t).seconds();
        double span = Math.max(
                1e-6,
                near.stream()
                        .mapToDouble(i -> Math.abs(looks.get(i).seconds() - now))
                        .max()
                        .orElse(1));
        double[] weight = new double[near.size()];
        Arrays.fill(weight, 1);
        double[] x = new double[3];
        double[] y = new double[3];
        for (int round = 0; round < 6; round++) {
            double[][] normal = {{1e-9, 0, 0}, {0, 1e-6, 0}, {0, 0, 1e-6}};
            double[] rx = new double[3];
            double[] ry = new double[3];
            for (int k = 0; k < near.size(); k++) {
                int i = near.get(k);
                double u = (looks.get(i).seconds() - now) / span;
                double w = weight[k] * Math.pow(1 - Math.pow(0.95 * Math.abs(u), 3), 3);
                double[] b = {1, u, u * u};
                for (int p = 0; p < 3; p++) {
                    rx[p] += w * b[p] * anchor[i].x();
                    ry[p] += w * b[p] * anchor[i].y();
                    for (int q = 0; q < 3; q++) {
                        normal[p][q] += w * b[p] * b[q];
                    }
                }
            }
            var solver = new LUDecomposition(new Array2DRowRealMatrix(normal)).getSolver();
            x = solver.solve(new ArrayRealVector(rx)).toArray();
            y = solver.solve(new ArrayRealVector(ry)).toArray();
            for (int k = 0; k < near.size(); k++) {
                int i = near.get(k);
                double u = (looks.get(i).seconds() - now) / span;
                Point p = new Point(x[0] + u * x[1] + u * u * x[2], y[0] + u * y[1] + u * u * y[2]);
                residual[k] = anchor[i].minus(p).dot(along[i]);
            }
            double[] sizes = Arrays.stream(residual).map(Math::abs).sorted().toArray();
            double scale = 4.685 * Math.max(1, 1.4826 * sizes[sizes.length / 2]);
            for (int k = 0; k < near.size(); k++) {
                double r = Math.abs(residual[k]) / scale;
                weight[k] = r < 1 ? (1 - r * r) * (1 - r * r) : 1e-3;
            }
        }
        return new Point(x[0], y[0]);
    }
}
