package bendline.geometry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;

/** An open chain of straight pieces with positions by arc length. At least two points; immutable. */
public final class Polyline {

    private final List<Point> points;
    private final double[] arc;

    /**
     * @param points at least two, in order
     * @throws IllegalArgumentException if there are fewer
     */
    public Polyline(List<Point> points) {
        if (points.size() < 2) {
            throw new IllegalArgumentException("a polyline needs two points, got " + points.size());
        }
        this.points = List.copyOf(points);
        this.arc = new double[points.size()];
        for (int i = 1; i < arc.length; i++) {
            arc[i] = arc[i - 1] + points.get(i).distance(points.get(i - 1));
        }
    }

    /** The vertices, in order. */
    public List<Point> points() {
        return points;
    }

    /** First vertex. */
    public Point first() {
        return points.get(0);
    }

    /** Last vertex. */
    public Point last() {
        return points.get(points.size() - 1);
    }

    /** Length along the chain. */
    public double length() {
        return arc[arc.length - 1];
    }

    /** The point at arc length {@code s}; beyond the ends it continues straight. */
    public Point at(double s) {
        int i = pieceAt(s);
        double piece = arc[i + 1] - arc[i];
        double f = piece > 0 ? (s - arc[i]) / piece : 0;
        return points.get(i).towards(points.get(i + 1), f);
    }

    /** Unit tangent at arc length {@code s}. */
    public Point tangentAt(double s) {
        int i = pieceAt(s);
        Point d = points.get(i + 1).minus(points.get(i));
        double n = d.norm();
        return n > 0 ? d.times(1 / n) : new Point(1, 0);
    }

    /** {@code count} points at equal arc-length steps, both ends included. */
    public Polyline resampled(int count) {
        List<Point> out = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            out.add(at(length() * i / (count - 1)));
        }
        return new Polyline(out);
    }

    /** From the first vertex to arc length {@code s}, with as many vertices; beyond the end it continues straight. */
    public Polyline cut(double s) {
        int count = points.size();
        List<Point> out = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            out.add(at(s * i / (count - 1)));
        }
        return new Polyline(out);
    }

    /** The same chain from its last vertex to its first. */
    public Polyline reversed() {
        List<Point> out = new ArrayList<>(points);
        Collections.reverse(out);
        return new Polyline(out);
    }

    /** Every vertex mapped. */
    public Polyline map(UnaryOperator<Point> f) {
        return new Polyline(points.stream().map(f).toList());
    }

    /** Shortest distance from a point to the chain. */
    public double distanceTo(Point p) {
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 1 < points.size(); i++) {
            Point a = points.get(i);
            Point d = points.get(i + 1).minus(a);
            double n2 = d.dot(d);
            double f = n2 > 0 ? Math.max(0, Math.min(1, p.minus(a).dot(d) / n2)) : 0;
            best = Math.min(best, p.distance(a.plus(d.times(f))));
        }
        return best;
    }

    private int pieceAt(double s) {
        int lo = 0;
        int hi = arc.length - 2;
        while (lo < hi) {
            int mid = (lo + hi + 1) >>> 1;
            if (arc[mid] <= s) {
                lo = mid;
            } else {
                hi = mid - 1;
            }
        }
        return lo;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Polyline that && points.equals(that.points);
    }

    @Override
    public int hashCode() {
        return points.hashCode();
    }

    @Override
    public String toString() {
        return "Polyline" + points;
    }
}
