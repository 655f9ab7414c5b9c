package bendline.trace;

import bendline.geometry.Polyline;
import bendline.geometry.PolynomialCurve;
import bendline.geometry.Point;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Turns a rough curve into the blank's centre line with sub-pixel accuracy: straighten the picture along the curve, find
 * the best continuous ridge in the strip, fit its offsets by a smooth function with outliers turned down, repeat.
 */
final class BlankFitter {

    static final int DEGREE = 6;
    private static final double[] REACH_PX = {14, 9, 6};
    private static final int POINTS = 60;

    private final double heightPx;
    private final Point pivot;
    private final double lengthPx;

    /**
     * @param heightPx picture height, pixels
     * @param pivot about where the hands are, pixels
     * @param lengthPx visible length of the rod, butt to tip, pixels; NaN while it is not known
     */
    BlankFitter(double heightPx, Point pivot, double lengthPx) {
        this.heightPx = heightPx;
        this.pivot = pivot;
        this.lengthPx = lengthPx;
    }

    /**
     * A fitted centre line.
     *
     * @param line from the inner end of the rod to the tip, pixels
     * @param acrossSdPx 68 % uncertainty of the tip across the blank, pixels
     * @param alongSdPx of the tip along the blank, pixels
     * @param directionSd of the direction near the hands, radians
     * @param profile ridge strength by distance from the tip inwards, one entry per {@link Strip#STEP_PX}
     * @param blurPx width of the blank's picture near the tip, pixels
     * @param evidence summed strength over the line, capped, strength times pixels
     * @param coverage share of the line that shows the blank
     */
    record Fit(
            Polyline line,
            double acrossSdPx,
            double alongSdPx,
            double directionSd,
            double[] profile,
            double blurPx,
            double evidence,
            double coverage) {}

    /** @return null where no continuous ridge is left */
    @Nullable Fit fit(Plane difference, Polyline seed) {
        return fit(difference, seed, REACH_PX);
    }

    /**
     * @param reachPx how far from the line to look in each round, pixels
     * @return null where no continuous ridge is left
     */
    @Nullable Fit fit(Plane difference, Polyline seed, double... reachPx) {
        Polyline line = seed;
        Fit fit = null;
        for (double reach : reachPx) {
            if (line.length() < 0.05 * heightPx) {
                return null;
            }
            fit = refine(difference, line, reach);
            if (fit == null) {
                return null;
            }
            line = fit.line();
        }
        return fit;
    }

    private @Nullable Fit refine(Plane difference, Polyline line, double reachPx) {
        double length = line.length();
        PolynomialCurve curve = PolynomialCurve.through(line.resampled(POINTS), DEGREE);
        double perStation = 2 * Strip.STEP_PX / length;
        int inner = (int) (0.16 * heightPx / Strip.STEP_PX);
        int outer = (int) (outwardPx(length) / Strip.STEP_PX);
        int stations = inner + outer + (int) (length / Strip.STEP_PX);
        double first = -1 - inner * perStation;
        Strip strip = new Strip(
                difference,
                curve,
                first,
                perStation,
                stations,
                reachPx,
                i -> Math.min(60, Blur.widest(curve.at(first + i * perStation).distance(pivot))));
        int[] path = ridge(strip);
        double[] q = new double[stations];
        for (int i = 0; i < stations; i++) {
            q[i] = strip.strength[i][path[i]];
        }
        Extent extent = extent(q, inner, stations - outer);
        if (extent.measuredTo() - extent.measuredFrom() < 0.05 * heightPx / Strip.STEP_PX) {
            return null;
        }
        OffsetFit offsets = new OffsetFit(strip, path, q, extent.measuredFrom(), extent.measuredTo());
        List<Point> points = new ArrayList<>(POINTS);
        for (int k = 0; k < POINTS; k++) {
            double i = extent.from() + (extent.tip() - extent.from()) * k / (POINTS - 1);
            points.add(across(curve, first + i * perStation, offsets.at(i)));
        }
        return result(new Polyline(points), extent, offsets, strip, path, q);
    }

    /**
     * @param from inner end of the rod, station
     * @param tip outer end, fractional station
     * @param tipSd its uncertainty, stations
     * @param measuredFrom first station that shows the blank
     * @param measuredTo last station that shows the blank
     * @param coverage share of stations that show it
     */
    private record Extent(double from, double tip, double tipSd, int measuredFrom, int measuredTo, double coverage) {}

    private Extent extent(double[] q, int seedFrom, int seedTo) {
        int third = (seedTo - seedFrom) / 3;
        if (Double.isNaN(lengthPx)) {
            int from = RodEnds.end(q, seedFrom + third, -1);
            int to = RodEnds.end(q, seedTo - third, 1);
            double crossing = RodEnds.crossing(q, to, 5);
            return new Extent(from, Double.isNaN(crossing) ? to : crossing, 1, from, to, 1);
        }
        int stations = (int) Math.round(lengthPx / Strip.STEP_PX);
        RodEnds.Window w = RodEnds.window(q, stations, (int) (0.04 * heightPx / Strip.STEP_PX));
        double crossing = RodEnds.crossing(q, w.to(), (int) Math.ceil(2 + w.slackStations()));
        double tip = Double.isNaN(crossing) ? w.to() : crossing;
        double sd = Double.isNaN(crossing) ? Math.max(2, w.slackStations()) : 0.7 + 0.3 * Math.abs(crossing - w.to());
        return new Extent(
                tip - stations, tip, sd, Math.max(0, w.from()), Math.min(w.lastEvidence(), w.to()), w.coverage());
    }

    private Fit result(Polyline line, Extent extent, OffsetFit offsets, Strip strip, int[] path, double[] q) {
        int last = Math.min(q.length - 1, (int) Math.round(extent.tip()));
        double[] profile = new double[last + 1];
        double evidence = 0;
        for (int i = last; i >= 0; i--) {
            profile[last - i] = q[i];
            evidence += i >= extent.from() ? Math.min(q[i], 30) * Strip.STEP_PX : 0;
        }
        int near = Math.max(extent.measuredFrom(), extent.measuredTo() - 6);
        double blur = strip.width[near][path[near]];
        double beyond = (extent.tip() - extent.measuredTo()) * Strip.STEP_PX;
        double sag = 0.5 * turnPerPx(line) * beyond * beyond;
        double across = Math.hypot(offsets.sdAt(extent.tip()), sag);
        double along = extent.tipSd() * Strip.STEP_PX + 0.1 * blur;
        return new Fit(
                line, across, along, offsets.slopeSdAt(extent.measuredFrom()), profile, blur, evidence, extent.coverage());
    }

    /** Mean curvature of the outer third, 1/px: what a straight continuation neglects. */
    private static double turnPerPx(Polyline line) {
        double l = line.length();
        double turn = bendline.geometry.Angles.wrap(line.tangentAt(0.97 * l).angle() - line.tangentAt(0.67 * l).angle());
        return Math.abs(turn) / (0.3 * l);
    }

    /** How far beyond the seed's outer end to look: far enough for the whole rod once its length is known. */
    private double outwardPx(double seedPx) {
        double usual = 0.08 * heightPx;
        return Double.isNaN(lengthPx) ? usual : Math.max(usual, lengthPx - seedPx + 0.04 * heightPx);
    }

    private static Point across(PolynomialCurve curve, double u, double offset) {
        Point d = curve.derivative(u);
        double n = d.norm();
        return curve.at(u).plus(new Point(-d.y() / n, d.x() / n).times(offset));
    }

    /** Best continuous path of offsets along the strip. */
    private static int[] ridge(Strip strip) {
        int n = strip.strength.length;
        int m = strip.offsets();
        float[][] total = new float[n][m];
        byte[][] from = new byte[n][m];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < m; k++) {
                float best = i == 0 ? 0 : total[i - 1][k];
                for (int d = -1; d <= 1; d += 2) {
                    int q = k + d;
                    if (i > 0 && q >= 0 && q < m && total[i - 1][q] - 1.5f > best) {
                        best = total[i - 1][q] - 1.5f;
                        from[i][k] = (byte) d;
                    }
                }
                total[i][k] = best + Math.min(40, strip.strength[i][k]);
            }
        }
        int[] path = new int[n];
        for (int k = 1; k < m; k++) {
            path[n - 1] = total[n - 1][k] > total[n - 1][path[n - 1]] ? k : path[n - 1];
        }
        for (int i = n - 1; i > 0; i--) {
            path[i - 1] = path[i] + from[i][path[i]];
        }
        return path;
    }
}
