package bendline.trace;

import bendline.geometry.Angles;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where a blank ends along a line that lies on it, in a picture as it is: contrast along the line falls from the blank's to
 * none there. What was known before and what the picture says are weighed as probabilities.
 *
 * @param beyondPx how far beyond the line's own end, negative inside it, pixels
 * @param sdPx 68 % uncertainty, pixels
 */
record LineEnd(double beyondPx, double sdPx) {

    private static final double STEP_PX = 0.5;

    /** How far inside its end a blank is asked how clear it is there, reaches. */
    private static final double INSIDE = 3;

    /** How far beside the line the picture is asked how much it varies without a blank, pixels. */
    private static final double[] BESIDE_PX = {-16, -11, 11, 16};

    /** A tip is thinner than what bears it: the share of the contrast there that still speaks for the blank. */
    private static final double THIN = 0.25;

    /** Outer share of a line from which is taken how it bends beyond its end. */
    private static final double OUTER = 0.12;

    /** Neighbouring pixels vary together over about so many pixels: only every so manyth is news. */
    private static final double ALIKE_PX = 4;

    /** Least variance of contrast, squared noise units: rounding and sampling. */
    private static final double FLOOR = 0.05;

    /**
     * @param reachPx how far from the line's end to look, pixels
     * @param priorSdPx 68 % uncertainty of the line's end before the picture is asked, pixels
     */
    static LineEnd of(LineSearch search, Polyline line, double reachPx, double priorSdPx) {
        double length = line.length();
        Polyline longer = drawnOn(line, reachPx);
        double blank = median(search, line, length - INSIDE * reachPx, length - reachPx);
        if (!(blank > 0)) {
            return new LineEnd(0, priorSdPx);
        }
        double faint = THIN * blank;
        double perPx = 2 * faint / Math.max(FLOOR, variance(search, line, reachPx)) / ALIKE_PX;
        int n = (int) Math.ceil(2 * reachPx / STEP_PX) + 1;
        double[] log = new double[n];
        double sum = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            double beyond = -reachPx + i * STEP_PX;
            double contrast = search.contrastAt(longer, length + beyond, 0);
            // Out of the picture there is nothing to be known.
            sum += Double.isNaN(contrast) ? 0 : (Math.min(contrast, 2 * faint) - faint) * STEP_PX;
            log[i] = perPx * sum - beyond * beyond / (2 * priorSdPx * priorSdPx);
            most = Math.max(most, log[i]);
        }
        double weight = 0;
        double mean = 0;
        double square = 0;
        for (int i = 0; i < n; i++) {
            double beyond = -reachPx + i * STEP_PX;
            double p = Math.exp(log[i] - most);
            weight += p;
            mean += p * beyond;
            square += p * beyond * beyond;
        }
        mean /= weight;
        return new LineEnd(mean, Math.sqrt(Math.max(STEP_PX * STEP_PX / 4, square / weight - mean * mean)));
    }

    private static double median(LineSearch search, Polyline line, double from, double to) {
        double[] values = new double[(int) Math.max(3, (to - from) / STEP_PX)];
        for (int i = 0; i < values.length; i++) {
            values[i] = search.contrastAt(line, from + (to - from) * i / (values.length - 1), 0);
        }
        Arrays.sort(values);
        return values[values.length / 2];
    }

    private static double variance(LineSearch search, Polyline line, double reachPx) {
        double sum = 0;
        int n = 0;
        for (double beside : BESIDE_PX) {
            for (double s = line.length() - INSIDE * reachPx; s < line.length() + reachPx; s += 1) {
                double contrast = search.contrastAt(line, s, beside);
                if (!Double.isNaN(contrast)) {
                    sum += Math.pow(Math.max(0, contrast), 2);
                    n++;
                }
            }
        }
        return n == 0 ? Double.POSITIVE_INFINITY : sum / n;
    }

    /** A line and how it goes on beyond its end if it keeps its curvature: a bent tip is the most curved part of a rod. */
    private static Polyline drawnOn(Polyline line, double px) {
        double length = line.length();
        double turn = Angles.wrap(line.tangentAt(length).angle()
                - line.tangentAt((1 - OUTER) * length).angle());
        double perPx = turn / (OUTER * length);
        List<Point> points = new ArrayList<>(line.points());
        double heading = line.tangentAt(length).angle();
        Point at = line.last();
        for (int i = 0; i < px; i++) {
            heading += perPx;
            at = at.plus(new Point(Math.cos(heading), Math.sin(heading)));
            points.add(at);
        }
        return new Polyline(points);
    }

    /** No farther than so much: where a line leads off the blank, it seems to end at once. */
    LineEnd within(double px) {
        double kept = Math.max(-px, Math.min(px, beyondPx));
        return new LineEnd(kept, Math.hypot(sdPx, beyondPx - kept));
    }

    /** The line from its first point to where it ends. */
    Polyline reached(Polyline line) {
        return drawnOn(line, Math.max(0, beyondPx)).cut(line.length() + beyondPx);
    }

    /** As much of the line as it had, moved along itself so that it ends there. */
    Polyline moved(Polyline line) {
        Polyline longer = drawnOn(line, Math.max(0, beyondPx));
        int count = line.points().size();
        List<Point> points = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            points.add(longer.at(beyondPx + line.length() * i / (count - 1)));
        }
        return new Polyline(points);
    }
}
