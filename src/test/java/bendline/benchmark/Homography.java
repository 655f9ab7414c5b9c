package bendline.benchmark;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/** A plane projective map as nine numbers, row by row. */
final class Homography {

    private Homography() {}

    /** The image of a point. */
    static Point apply(List<Double> h, Point p) {
        double w = h.get(6) * p.x() + h.get(7) * p.y() + h.get(8);
        return new Point(
                (h.get(0) * p.x() + h.get(1) * p.y() + h.get(2)) / w,
                (h.get(3) * p.x() + h.get(4) * p.y() + h.get(5)) / w);
    }

    /** The map back. */
    static List<Double> inverse(List<Double> h) {
        return list(new LUDecomposition(matrix(h)).getSolver().getInverse());
    }

    /** The same map for coordinates that are larger by {@code shift} in x and y, before and after. */
    static List<Double> moveCentres(List<Double> h, double shift) {
        RealMatrix there = MatrixUtils.createRealMatrix(new double[][] {{1, 0, shift}, {0, 1, shift}, {0, 0, 1}});
        RealMatrix back = MatrixUtils.createRealMatrix(new double[][] {{1, 0, -shift}, {0, 1, -shift}, {0, 0, 1}});
        return list(there.multiply(matrix(h)).multiply(back));
    }

    private static RealMatrix matrix(List<Double> h) {
        RealMatrix m = MatrixUtils.createRealMatrix(3, 3);
        for (int i = 0; i < 9; i++) {
            m.setEntry(i / 3, i % 3, h.get(i));
        }
        return m;
    }

    private static List<Double> list(RealMatrix m) {
        List<Double> out = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            out.add(m.getEntry(i / 3, i % 3));
        }
        return out;
    }
}
