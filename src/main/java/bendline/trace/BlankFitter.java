package bendline.trace;

import bendline.geometry.Angles;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.geometry.PolynomialCurve;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Turns a rough curve into the blank's centre line with sub-pixel accuracy: straighten the picture along the curve, find
 * the best continuous ridge in the strip, fit its offsets by a smooth function with outliers turned down, repeat.
 */
final class BlankFitter {

    static final int DEGREE = 6;
    private static final int POINTS = 60;
    /** Share of the blank, from the tip, that lies clear of the hands. */
    static final double CLEAR_OF_HANDS = 0.9;

    /** How much a line followed from frame to frame resists a change of shape, against stations of usual weight. */
    private static final double STAYS = 0.15;

    /** Widest picture of the blank that is looked for, pixels. */
    private static final double WIDEST_PX = 60;

    /** Once a round has told how wide the blank's picture is near the tip, not much more is looked for: a factor and pixels. */
    private static final double BLUR_MARGIN = 1.5;

    private static final double BLUR_MORE_PX = 8;

    /** How far beyond the corner at which line turns off the tip may still be, pixels besides the blur. */
    private static final double PAST_CORNER_PX = 5;

    private final double heightPx;
    private final Point pivot;
    private final double freePx;
    private final int polarity;
    private final double farthestPx;
    private final Paint paint;

    /**
     * @param heightPx picture height, pixels
     * @param pivot about where the hands are, pixels
     * @param freePx upper hand to tip along the blank, pixels; NaN while it is not known
     */
    BlankFitter(double heightPx, Point pivot, double freePx) {
        this(heightPx, pivot, freePx, 0);
    }

    /** @param polarity 1 for a blank brighter than its surroundings, −1 for a darker one, 0 where that may change */
    BlankFitter(double heightPx, Point pivot, double freePx, int polarity) {
        this(heightPx, pivot, freePx, polarity, Double.POSITIVE_INFINITY, Paint.UNKNOWN);
    }

    private BlankFitter(double heightPx, Point pivot, double freePx, int polarity, double farthestPx, Paint paint) {
        this.heightPx = heightPx;
        this.pivot = pivot;
        this.freePx = freePx;
        this.polarity = polarity;
        this.farthestPx = farthestPx;
        this.paint = paint;
    }

    /** The same for lines that end no farther than so much from the pivot, pixels. */
    BlankFitter upTo(double px) {
        return new BlankFitter(heightPx, pivot, freePx, polarity, px, paint);
    }

    /** The same where it is known whether the tip is painted. */
    BlankFitter painted(Paint other) {
        return new BlankFitter(heightPx, pivot, freePx, polarity, farthestPx, other);
    }

    /**
     * A fitted centre line.
     *
     * @param line from the inner end of what is visible to the tip, pixels
     * @param acrossSdPx 68 % uncertainty of the tip across the blank, pixels
     * @param alongSdPx of the tip along the blank, pixels
     * @param directionSd of the direction near the hands, radians
     * @param blurPx width of the blank's picture near the tip, pixels
     * @param evidence summed strength over the line, capped, strength times pixels
     * @param coverage share of the rod's length that shows the blank
     * @param hiddenPx how much of the blank is missing beyond the line's outer end, pixels
     * @param faint what of its outer end is fainter than the rest, and goes on from there
     */
    record Fit(
            Polyline line,
            double acrossSdPx,
            double alongSdPx,
            double directionSd,
            double blurPx,
            double evidence,
            double coverage,
            double hiddenPx,
            FaintEnd faint) {

        /** One beyond whose end, and the missing piece, nothing goes on. */
        Fit(
                Polyline line,
                double acrossSdPx,
                double alongSdPx,
                double directionSd,
                double blurPx,
                double evidence,
                double coverage,
                double hiddenPx) {
            this(line, acrossSdPx, alongSdPx, directionSd, blurPx, evidence, coverage, hiddenPx, FaintEnd.NONE);
        }

        /** The same with the tip elsewhere along the blank. */
        Fit withTip(Polyline moved, double sdPx) {
            return new Fit(moved, acrossSdPx, sdPx, directionSd, blurPx, evidence, coverage, 0);
        }

        /** The same with the blank a little beside where it was. */
        Fit onLine(Polyline moved) {
            return new Fit(moved, acrossSdPx, alongSdPx, directionSd, blurPx, evidence, coverage, hiddenPx, faint);
        }

        /** The same in other coordinates that differ by hardly more than a shift, so that distances stay as they are. */
        Fit inOther(Homography map) {
            return new Fit(
                    line.map(map::apply),
                    acrossSdPx,
                    alongSdPx,
                    directionSd,
                    blurPx,
                    evidence,
                    coverage,
                    hiddenPx,
                    faint);
        }

        /**
         * The same without what lies farther inside than so much from its outer end, pixels. The direction's uncertainty stays, which
         * is no less inside the line than at its end; so does the coverage, which speaks of gaps and not of length.
         */
        Fit clearOfHand(double px) {
            Polyline clear = px < line.length() ? line.reversed().cut(px).reversed() : line;
            return new Fit(clear, acrossSdPx, alongSdPx, directionSd, blurPx, evidence, coverage, hiddenPx, faint);
        }

        /** The same with another kind of end. */
        Fit with(FaintEnd end) {
            return new Fit(line, acrossSdPx, alongSdPx, directionSd, blurPx, evidence, coverage, hiddenPx, end);
        }

        /** The same of which so much is missing outside. */
        Fit withHidden(double px) {
            return new Fit(line, acrossSdPx, alongSdPx, directionSd, blurPx, evidence, coverage, px, faint);
        }
    }

    /**
     * @param reachPx how far from the line to look in each round, pixels
     * @return null where no continuous ridge is left
     */
    @Nullable
    Fit fit(Plane difference, Polyline seed, double... reachPx) {
        Polyline line = seed;
        Ridge ridge = null;
        for (double reach : reachPx) {
            if (line.length() < 0.05 * heightPx) {
                return null;
            }
            double widest =
                    ridge == null ? WIDEST_PX : Math.min(WIDEST_PX, BLUR_MARGIN * ridge.blurPx() + BLUR_MORE_PX);
            ridge = refine(difference, line, reach, widest);
            if (ridge == null) {
                return null;
            }
            line = ridge.line();
        }
        Fit fit = ridge == null ? null : withTip(difference, ridge);
        return fit == null ? null : paint.shown(fit);
    }

    /**
     * Follows a line whose shape and length are nearly known: where the picture shows nothing, it stays as it is.
     *
     * @param line expected, from the hand to the tip, pixels
     * @param reachPx how far from it to look, pixels
     */
    Fit fitWhole(Plane difference, Polyline line, double reachPx) {
        PolynomialCurve curve = PolynomialCurve.through(line.resampled(POINTS), DEGREE);
        int stations = (int) (line.length() / Strip.STEP_PX) + 1;
        double perStation = 2.0 / (stations - 1);
        Strip strip = new Strip(difference, curve, -1, perStation, stations, reachPx, i -> 8, polarity);
        int[] path = RidgePath.of(strip);
        OffsetFit offsets = new OffsetFit(Offsets.of(strip, path, 0, stations - 1), 0, stations - 1, STAYS);
        List<Point> points = new ArrayList<>(POINTS);
        for (int k = 0; k < POINTS; k++) {
            double i = (stations - 1.0) * k / (POINTS - 1);
            points.add(across(curve, -1 + i * perStation, offsets.at(i)));
        }
        Polyline whole = new Polyline(points).cut(line.length());
        double blur = Math.min(6, usualWidth(strip, path, stations / 2, stations));
        Ridge ridge = new Ridge(whole, offsets.sdAt(stations - 1.0), offsets.slopeSdAt(0), blur, false);
        Fit fit = withTip(difference, ridge);
        double coverage = fit == null ? 0 : fit.coverage();
        return new Fit(whole, ridge.acrossSdPx(), 0.03 * line.length(), ridge.directionSd(), blur, 0, coverage, 0);
    }

    private @Nullable Ridge refine(Plane difference, Polyline line, double reachPx, double widestPx) {
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
                i -> Math.min(
                        widestPx, Blur.widest(curve.at(first + i * perStation).distance(pivot))),
                polarity);
        int[] path = RidgePath.of(strip);
        double[] q = new double[stations];
        for (int i = 0; i < stations; i++) {
            q[i] = strip.strength[i][path[i]];
        }
        int third = (stations - inner - outer) / 3;
        int from = RodEnds.end(q, inner + third, -1);
        int shown = RodEnds.end(q, stations - outer - third, 1);
        while (shown > from && curve.at(first + shown * perStation).distance(pivot) > farthestPx) {
            shown--;
        }
        Offsets places = Offsets.of(strip, path, from, shown);
        int to = withoutLine(strip, path, Corner.before(places.offset(), places.weight(), from, shown));
        if (!Double.isNaN(freePx)) {
            // Near the hands the ridge is theirs or an arm's and would bend the curve's inner end.
            from = Math.max(from, to - (int) (CLEAR_OF_HANDS * freePx / Strip.STEP_PX));
        }
        if (to - from < 0.05 * heightPx / Strip.STEP_PX) {
            return null;
        }
        OffsetFit offsets = new OffsetFit(places, from, to, 1e-3);
        List<Point> points = new ArrayList<>(POINTS);
        for (int k = 0; k < POINTS; k++) {
            double i = from + (double) (to - from) * k / (POINTS - 1);
            points.add(across(curve, first + i * perStation, offsets.at(i)));
        }
        return new Ridge(
                new Polyline(points),
                offsets.sdAt(to),
                offsets.slopeSdAt(from),
                usualWidth(strip, path, to - 20, to),
                to < shown);
    }

    /** Up to where the tip can be by the paint, so that of a line that leads on none counts as rod and as much of that is left out inside. */
    private int withoutLine(Strip strip, int[] path, int to) {
        double most = paint.mostPx() / Strip.STEP_PX;
        if (most >= to) {
            return to;
        }
        double[] signed = new double[path.length];
        for (int i = 0; i < signed.length; i++) {
            signed[i] = strip.signed(i, path[i]);
        }
        int turned = Turnover.station(signed, to);
        return turned < 0 ? to : Math.min(to, turned + (int) most);
    }

    /** Median width at which the ridge was found between two stations, both included. */
    private static double usualWidth(Strip strip, int[] path, int from, int to) {
        double[] out = new double[path.length];
        for (int i = Math.max(0, from); i < Math.min(out.length, to + 1); i++) {
            out[i] = strip.width(i, path[i]);
        }
        return RodEnds.median(out, from, to);
    }

    /**
     * @param line over the stretch that shows the blank, pixels
     * @param acrossSdPx of its outer end
     * @param directionSd of its inner end, radians
     * @param blurPx width of the blank's picture near the outer end
     * @param turnsOff whether a line leads on from there at an angle
     */
    private record Ridge(Polyline line, double acrossSdPx, double directionSd, double blurPx, boolean turnsOff) {}

    /**
     * Where the tip is along the line. Now that the line is known to a pixel, only what lies right on it and is as wide as
     * the blank is asked, so that much weaker evidence counts than while searching.
     */
    private @Nullable Fit withTip(Plane difference, Ridge ridge) {
        Polyline line = ridge.line();
        double length = line.length();
        PolynomialCurve curve = PolynomialCurve.through(line.resampled(POINTS), DEGREE);
        double perStation = 2 * Strip.STEP_PX / length;
        double outwardPx = ridge.turnsOff() ? PAST_CORNER_PX + ridge.blurPx() : outwardPx(length);
        int outer = (int) (outwardPx / Strip.STEP_PX);
        int inside = (int) (length / Strip.STEP_PX);
        double widest = 1.5 * ridge.blurPx() + 2.5;
        int stations = inside + outer;
        while (stations > inside && curve.at(-1 + stations * perStation).distance(pivot) > farthestPx) {
            stations--;
        }
        Strip strip = new Strip(difference, curve, -1, perStation, stations, 3, i -> widest, polarity);
        double[] q = new double[stations];
        for (int i = 0; i < q.length; i++) {
            for (float s : strip.strength[i]) {
                q[i] = Math.max(q[i], s);
            }
        }
        double[] signed = new double[stations];
        for (int i = 0; i < q.length; i++) {
            signed[i] = strip.signed(i);
        }
        RodEnds.Tip tip = RodEnds.tip(q, inside / 2, inside);
        if (tip.station() < inside / 3) {
            return null;
        }
        Polyline whole = curve.chain(-1, -1 + tip.station() * perStation, POINTS);
        double beyond = Math.max(0, tip.station() - inside) * Strip.STEP_PX;
        double sag = 0.5 * turnPerPx(line) * beyond * beyond;
        double evidence = 0;
        double shown = 0;
        int last = (int) tip.station();
        for (int i = 0; i <= last; i++) {
            evidence += Math.min(q[i], 30) * Strip.STEP_PX;
            shown += Math.min(1, q[i] / tip.level());
        }
        int turned = Turnover.station(signed, last);
        double turnedPx = turned < 0 ? Double.NaN : (tip.station() - turned + 0.5) * Strip.STEP_PX;
        double wanted = Double.isNaN(freePx) ? last + 1 : Math.max(last + 1, CLEAR_OF_HANDS * freePx / Strip.STEP_PX);
        return new Fit(
                whole,
                Math.hypot(ridge.acrossSdPx(), sag),
                tip.sdStations() * Strip.STEP_PX + 0.1 * ridge.blurPx(),
                ridge.directionSd(),
                ridge.blurPx(),
                evidence,
                shown / wanted,
                0,
                ridge.turnsOff()
                        ? FaintEnd.turned(turnedPx)
                        : FaintEnd.of(Arrays.copyOf(q, last + 1), difference, whole, ridge.blurPx(), turnedPx));
    }

    /** Mean curvature of the outer third, 1/px: what a straight continuation neglects. */
    private static double turnPerPx(Polyline line) {
        double l = line.length();
        double turn = Angles.wrap(
                line.tangentAt(0.97 * l).angle() - line.tangentAt(0.67 * l).angle());
        return Math.abs(turn) / (0.3 * l);
    }

    /** How far beyond the seed's outer end to look: far enough for the whole rod once its length is known. */
    private double outwardPx(double seedPx) {
        double usual = 0.08 * heightPx;
        return Double.isNaN(freePx) ? usual : Math.max(usual, 1.1 * freePx - seedPx + 0.04 * heightPx);
    }

    private static Point across(PolynomialCurve curve, double u, double offset) {
        Point d = curve.derivative(u);
        double n = d.norm();
        return curve.at(u).plus(new Point(-d.y() / n, d.x() / n).times(offset));
    }
}
