package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.signal.LeastSquares;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Draws the blank on to the upper hand, where hands and arms hide its edges: the inner part of what was fitted, continued
 * with its own curvature, which dies away because a blank is the stiffer the nearer to the butt.
 */
final class ToTheHand {

    /** Share of the fitted line that sets direction and curvature of the continuation. */
    private static final double INNER_SHARE = 0.35;

    private static final int SAMPLES = 25;
    private static final int STEPS = 16;

    /** Over this share of the free length the curvature of the continuation falls to nothing. */
    private static final double STIFF_SHARE = 0.25;

    private ToTheHand() {}

    /**
     * @param line fitted, from near the hand to the tip
     * @param freePx upper hand to tip along the blank
     * @param points how many points the result has
     * @return from the hand to the tip at equal steps
     */
    static Polyline drawn(Polyline line, double freePx, int points) {
        double length = line.length();
        double missing = freePx - length;
        double span = INNER_SHARE * length;
        double[] at = new double[SAMPLES];
        double[] xs = new double[SAMPLES];
        double[] ys = new double[SAMPLES];
        double[] alike = new double[SAMPLES];
        Arrays.fill(alike, 1);
        for (int k = 0; k < SAMPLES; k++) {
            at[k] = (double) k / (SAMPLES - 1);
            Point p = line.at(span * at[k]);
            xs[k] = p.x();
            ys[k] = p.y();
        }
        double[] x = LeastSquares.parabola(at, xs, alike);
        double[] y = LeastSquares.parabola(at, ys, alike);
        double blend = 0.1 * length;
        List<Point> out = new ArrayList<>(points);
        for (int k = 0; k < points; k++) {
            double s = -missing + freePx * k / (points - 1);
            if (s < 0) {
                out.add(inwards(x, y, span, -s, STIFF_SHARE * freePx));
            } else {
                double u = s / span;
                Point smooth = new Point(x[0] + u * (x[1] + u * x[2]), y[0] + u * (y[1] + u * y[2]));
                out.add(smooth.towards(line.at(s), Math.min(1, s / blend)));
            }
        }
        return new Polyline(out);
    }

    /**
     * The point a way inside the start of a parabola in u = s / span, going on with its direction and a curvature that falls to
     * nothing over {@code fade}.
     */
    private static Point inwards(double[] x, double[] y, double span, double way, double fade) {
        Point slope = new Point(x[1] / span, y[1] / span);
        double speed = slope.norm();
        double curvature = slope.cross(new Point(2 * x[2], 2 * y[2])) / (span * span * speed * speed * speed);
        double heading = slope.angle() + Math.PI;
        double px = x[0];
        double py = y[0];
        for (int k = 0; k < STEPS; k++) {
            double r = Math.min(fade, way * (k + 0.5) / STEPS);
            double turned = heading - curvature * (r - r * r / (2 * fade));
            px += way / STEPS * Math.cos(turned);
            py += way / STEPS * Math.sin(turned);
        }
        return new Point(px, py);
    }
}
