package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.Trace;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * The upright plane in which a cast goes on, as a phone that does not stand quite square to it sees it: from reference pixels
 * to metres.
 *
 * <p>What tells how it stands is the rod, whose length does not change: the two angles between phone and plane are those under
 * which the lengths of the blank, read in all frames, agree best. Angles far from square must pay for it, so that a rod seen in
 * too few directions is taken to be seen squarely. The focal length is a phone's usual one; a wrong one changes the angles found,
 * hardly the lengths.
 *
 * @param centreX middle of the picture, pixels
 * @param centreY middle of the picture, pixels
 * @param focalPx focal length, pixels
 * @param yawRad how far the plane is turned about the upright
 * @param pitchRad how far it is tipped about the level
 * @param metresPerUnit metres, or rod lengths, in a distance of one camera-to-plane
 * @param lengthSd 68 % scatter of the lengths after that, over their value
 * @param told whether the rod was seen in enough frames to tell the angles; else the plane is taken to be seen squarely
 * @param basis what was done, for people
 */
record CastPlane(
        double centreX,
        double centreY,
        double focalPx,
        double yawRad,
        double pitchRad,
        double metresPerUnit,
        double lengthSd,
        boolean told,
        String basis) {

    /** Focal length over the picture's longer side: main cameras of phones, cropped for video (common practice, no source). */
    private static final double FOCAL = 0.79;

    /** How far from square people stand, radians, and how far up they tilt the phone. Common practice, no source. */
    private static final double USUAL_YAW = Math.toRadians(10);

    private static final double USUAL_PITCH = Math.toRadians(6);
    private static final double FARTHEST = Math.toRadians(35);

    /** Scatter of the lengths that is to be expected, and beyond which a length counts no more. */
    private static final double SCATTER = 0.012;

    private static final double STRAY = 3;

    /** Frames tell alike: so many of them, at most, count. */
    private static final double WORTH = 30;

    /** Step over which the cost's bend is taken, radians, and how far a phone's focal length may be another. */
    private static final double PROBE = Math.toRadians(2);

    private static final double FOCAL_SD = 0.1;

    /** What errors of the tracker that last for many frames do to an angle, radians. */
    private static final double DRIFT = Math.toRadians(2);

    private static final int LEAST_FRAMES = 12;
    private static final int POINTS = 11;

    /** The plane of a clip's casts, in rod lengths, upper hand to tip, instead of metres. */
    static CastPlane of(Trace trace) {
        double[][][] blanks = trace.frames().stream()
                .filter(f -> f.blank() != null && f.tip().seen())
                .map(f -> f.blank().resampled(POINTS).points())
                .map(CastPlane::coordinates)
                .toArray(double[][][]::new);
        double[] best = {0, 0};
        CastPlane square = at(trace, best, 1);
        boolean enough = blanks.length >= LEAST_FRAMES;
        if (enough) {
            best = search(trace, blanks);
        }
        CastPlane found = at(trace, best, 1);
        double[] lengths = found.lengths(blanks);
        double middle = blanks.length == 0 ? trace.freeLengthPx() / found.focalPx() : middle(lengths);
        double before = blanks.length == 0 ? 0 : spread(square.lengths(blanks));
        double after = blanks.length == 0 ? 0.03 : spread(lengths);
        double[] doubt = enough ? doubt(trace, blanks, best, Math.max(1, after / SCATTER)) : best;
        String basis = enough
                ? String.format(
                        Locale.ROOT,
                        "the phone taken to stand %.0f° ± %.0f° from square and tilted by %.0f° ± %.0f°, since the rod's length then"
                                + " stays the same within %.1f %% instead of %.1f %% in %d frames",
                        Math.toDegrees(Math.abs(best[0])),
                        Math.toDegrees(doubt[0]),
                        Math.toDegrees(Math.abs(best[1])),
                        Math.toDegrees(doubt[1]),
                        100 * after,
                        100 * before,
                        blanks.length)
                : "the phone taken to stand square, since the whole rod was seen in only " + blanks.length + " frames";
        return new CastPlane(
                found.centreX, found.centreY, found.focalPx, best[0], best[1], 1 / middle, after, enough, basis);
    }

    /**
     * The same in metres.
     *
     * @param lengthM upper hand to tip, metres
     */
    CastPlane inMetres(double lengthM) {
        return new CastPlane(
                centreX, centreY, focalPx, yawRad, pitchRad, lengthM * metresPerUnit, lengthSd, told, basis);
    }

    private static double[][] coordinates(List<Point> points) {
        return points.stream().map(p -> new double[] {p.x(), p.y()}).toArray(double[][]::new);
    }

    private static CastPlane at(Trace trace, double[] angles, double metres) {
        double focal = FOCAL * Math.max(trace.width(), trace.height());
        return new CastPlane(
                0.5 * trace.width(), 0.5 * trace.height(), focal, angles[0], angles[1], metres, Double.NaN, false, "");
    }

    /** Steps that shrink, from square outwards; each the best of eight, so that a clip seen in a mirror goes the mirrored way. */
    private static double[] search(Trace trace, double[][][] blanks) {
        double[] best = {0, 0};
        double least = cost(trace, blanks, best);
        for (double step = Math.toRadians(8); step > Math.toRadians(0.2); step /= 2) {
            boolean better = true;
            while (better) {
                double[] from = best;
                better = false;
                for (int k = 0; k < 8; k++) {
                    Point d = Point.direction(k * Math.PI / 4).times(step);
                    double[] trial = {from[0] + d.x(), from[1] + d.y()};
                    double c = cost(trace, blanks, trial);
                    if (c < least - 1e-9) {
                        least = c;
                        best = trial;
                        better = true;
                    }
                }
            }
        }
        return best;
    }

    /**
     * 68 % uncertainties of the two angles: from how the cost, a sum of squares, bends about its lowest point (its second derivatives
     * are twice the inverse covariance), from lengths that drift together, and from a focal length that is another.
     *
     * @param wider by how many times the lengths scatter more than is to be expected
     */
    private static double[] doubt(Trace trace, double[][][] blanks, double[] best, double wider) {
        double h = PROBE;
        double middle = cost(trace, blanks, best);
        double[] second = new double[2];
        for (int k = 0; k < 2; k++) {
            double[] up = best.clone();
            double[] down = best.clone();
            up[k] += h;
            down[k] -= h;
            second[k] = (cost(trace, blanks, up) - 2 * middle + cost(trace, blanks, down)) / (h * h);
        }
        double mixed = 0;
        for (int k = 0; k < 4; k++) {
            int a = k % 2 == 0 ? 1 : -1;
            int b = k < 2 ? 1 : -1;
            mixed += a * b * cost(trace, blanks, new double[] {best[0] + a * h, best[1] + b * h}) / (4 * h * h);
        }
        double det = second[0] * second[1] - mixed * mixed;
        boolean bowl = Double.isFinite(det) && det > 0 && second[0] > 0;
        double yaw = bowl ? Math.sqrt(2 * second[1] / det) : USUAL_YAW;
        double pitch = bowl ? Math.sqrt(2 * second[0] / det) : USUAL_PITCH;
        return new double[] {
            Math.min(USUAL_YAW, Math.hypot(Math.hypot(wider * yaw, DRIFT), FOCAL_SD * best[0])),
            Math.min(USUAL_PITCH, Math.hypot(Math.hypot(wider * pitch, DRIFT), FOCAL_SD * best[1]))
        };
    }

    private static double cost(Trace trace, double[][][] blanks, double[] angles) {
        if (Math.hypot(angles[0], angles[1]) > FARTHEST) {
            return Double.POSITIVE_INFINITY;
        }
        double[] lengths = at(trace, angles, 1).lengths(blanks);
        double middle = middle(lengths);
        double sum = 0;
        for (double l : lengths) {
            double off = Math.min(STRAY, Math.abs(Math.log(l / middle)) / SCATTER);
            sum += off * off;
        }
        double yaw = angles[0] / USUAL_YAW;
        double pitch = angles[1] / USUAL_PITCH;
        return sum * Math.min(1, WORTH / lengths.length) + yaw * yaw + pitch * pitch;
    }

    private double[] lengths(double[][][] blanks) {
        return Arrays.stream(blanks).mapToDouble(this::length).toArray();
    }

    private double length(double[][] blank) {
        double sum = 0;
        Point before = metres(new Point(blank[0][0], blank[0][1]));
        for (int k = 1; k < blank.length; k++) {
            Point p = metres(new Point(blank[k][0], blank[k][1]));
            sum += p.distance(before);
            before = p;
        }
        return sum;
    }

    /**
     * How far off an end of a blank that was seen whole must be, metres: what its length differs from the rod's by, less what
     * lengths usually scatter by. A tip that is another thing's is seldom just as far from the hand as the rod's.
     *
     * @param lengthM what this plane was made for
     */
    double misplaced(Polyline blank, double lengthM) {
        double off = Math.abs(length(coordinates(blank.resampled(POINTS).points())) - lengthM);
        double usual = SCATTER * lengthM;
        return Math.sqrt(Math.max(0, off * off - usual * usual));
    }

    private static double middle(double[] lengths) {
        double[] s = Arrays.stream(lengths).filter(Double::isFinite).sorted().toArray();
        return s.length == 0 ? Double.NaN : s[s.length / 2];
    }

    /** Half the width of the middle 68 %. */
    private static double spread(double[] lengths) {
        double middle = middle(lengths);
        return Spread.of(Arrays.stream(lengths).map(l -> l / middle).toArray());
    }

    /** A place of the reference picture in the plane: metres, x to the picture's right, y up, from its middle. */
    Point metres(Point px) {
        double u = (px.x() - centreX) / focalPx;
        double v = (px.y() - centreY) / focalPx;
        double cy = Math.cos(yawRad);
        double sy = Math.sin(yawRad);
        double cp = Math.cos(pitchRad);
        double sp = Math.sin(pitchRad);
        // In the camera's axes (right, down, away): level and upright of the plane, made square to one another, and its
        // normal.
        double[] level = {cy, 0, sy};
        double along = sy * sp;
        double[] up = {-along * cy, -cp, sp - along * sy};
        double size = Math.sqrt(up[0] * up[0] + up[1] * up[1] + up[2] * up[2]);
        double nx = -sy * up[1];
        double ny = sy * up[0] - cy * up[2];
        double nz = cy * up[1];
        double t = nz / (nx * u + ny * v + nz);
        double x = level[0] * t * u + level[2] * (t - 1);
        double y = (up[0] * t * u + up[1] * t * v + up[2] * (t - 1)) / size;
        return new Point(x * metresPerUnit, y * metresPerUnit);
    }
}
