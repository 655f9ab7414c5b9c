package bendline.benchmark;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/** A few points of a bent rod as a fine chain, so that the corners between them do not count as error. */
final class SmoothCurve {

    private static final int PIECES = 6;

    private SmoothCurve() {}

    /** A cubic spline through the points, cut into straight pieces a sixth of their spacing long. */
    static Polyline through(List<Point> points) {
        double[] at = new double[points.size()];
        double[] x = new double[points.size()];
        double[] y = new double[points.size()];
        for (int i = 0; i < at.length; i++) {
            at[i] = i;
            x[i] = points.get(i).x();
            y[i] = points.get(i).y();
        }
        PolynomialSplineFunction fx = new SplineInterpolator().interpolate(at, x);
        PolynomialSplineFunction fy = new SplineInterpolator().interpolate(at, y);
        List<Point> out = new ArrayList<>();
        int count = (points.size() - 1) * PIECES;
        for (int i = 0; i <= count; i++) {
            double t = Math.min((double) i / PIECES, at.length - 1.0);
            out.add(new Point(fx.value(t), fy.value(t)));
        }
        return new Polyline(out);
    }

    /** The part of a chain from the place nearest to {@code start} to its end. */
    static Polyline from(Polyline chain, Point start) {
        List<Point> points = chain.points();
        int piece = 0;
        Point foot = points.get(0);
        for (int i = 0; i + 1 < points.size(); i++) {
            Point d = points.get(i + 1).minus(points.get(i));
            double n2 = d.dot(d);
            double f =
                    n2 > 0 ? Math.max(0, Math.min(1, start.minus(points.get(i)).dot(d) / n2)) : 0;
            Point candidate = points.get(i).plus(d.times(f));
            if (candidate.distance(start) < foot.distance(start)) {
                foot = candidate;
                piece = i;
            }
        }
        List<Point> out = new ArrayList<>();
        out.add(foot);
        out.addAll(points.subList(piece + 1, points.size()));
        return new Polyline(out);
    }
}
