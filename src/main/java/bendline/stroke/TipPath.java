package bendline.stroke;

import bendline.geometry.Circle;
import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;

/**
 * The tip's path through the forward stroke, in free lengths.
 *
 * @param radius of the nearest circle
 * @param roundness rms distance from that circle
 * @param dip depth of the deepest hollow under a straight edge laid over the path
 */
record TipPath(Found radius, Found roundness, Found dip) {

    private static final int LEAST_POINTS = 6;
    private static final double LEAST_SEEN = 0.7;

    static TipPath of(RodSeries rod, StrokeTrends trends, double freeLengthPx, double from, double to) {
        List<Point> path = new ArrayList<>();
        int frames = 0;
        double variance = 0;
        for (int i = 0; i < rod.size(); i++) {
            if (rod.time()[i] >= from && rod.time()[i] <= to) {
                frames++;
                double x = trends.tipX().values()[i];
                double y = trends.tipY().values()[i];
                if (!Double.isNaN(rod.tipX()[i]) && !Double.isNaN(x + y)) {
                    path.add(new Point(x, y).times(1 / freeLengthPx));
                    variance += Math.pow(trends.tipX().valueSds()[i] / freeLengthPx, 2);
                }
            }
        }
        if (path.size() < LEAST_POINTS || path.size() < LEAST_SEEN * frames) {
            Found none = Found.nothing("the tip was seen in " + path.size() + " of the " + frames
                    + " frames of the forward stroke, too few for its path");
            return new TipPath(none, none, none);
        }
        double sd = Math.sqrt(variance / path.size());
        return measured(path, sd);
    }

    private static TipPath measured(List<Point> path, double sd) {
        String basis = "the tip's smoothed path from forward start to release, " + path.size() + " frames";
        Circle c;
        try {
            c = Circle.through(path);
        } catch (IllegalArgumentException straight) {
            Found none = Found.nothing("the tip's path is a straight line, no circle fits it");
            return new TipPath(none, none, new Found(dip(path), 1.5 * sd, basis));
        }
        double sum = 0;
        for (Point p : path) {
            sum += Math.pow(c.outside(p), 2);
        }
        double rms = Math.sqrt(sum / path.size());
        double span = path.get(0).distance(path.get(path.size() - 1));
        double radiusSd = c.radius() * Math.max(sd, rms) * 8 * c.radius() / (span * span * Math.sqrt(path.size()));
        return new TipPath(
                new Found(c.radius(), radiusSd, basis),
                new Found(rms, Math.max(sd / Math.sqrt(path.size()), 0.1 * sd), basis),
                new Found(dip(path), 1.5 * sd, basis));
    }

    /** Deepest point under the upper hull of a path that goes forward. */
    static double dip(List<Point> path) {
        List<Point> hull = new ArrayList<>();
        for (Point p :
                path.stream().sorted((a, b) -> Double.compare(a.x(), b.x())).toList()) {
            while (hull.size() > 1 && !turnsDown(hull.get(hull.size() - 2), hull.get(hull.size() - 1), p)) {
                hull.remove(hull.size() - 1);
            }
            hull.add(p);
        }
        double deepest = 0;
        for (Point p : path) {
            for (int i = 0; i + 1 < hull.size(); i++) {
                Point a = hull.get(i);
                Point b = hull.get(i + 1);
                if (p.x() >= a.x() && p.x() <= b.x() && b.x() > a.x()) {
                    double y = a.y() + (b.y() - a.y()) * (p.x() - a.x()) / (b.x() - a.x());
                    deepest = Math.max(deepest, y - p.y());
                }
            }
        }
        return deepest;
    }

    private static boolean turnsDown(Point a, Point b, Point c) {
        return b.minus(a).cross(c.minus(b)) < 0;
    }
}
