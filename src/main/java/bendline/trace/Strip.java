package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.PolynomialCurve;
import bendline.image.Plane;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The difference picture straightened along a curve: rows are stations along it, columns offsets across it, and the ridge
 * strength at each, best over several widths.
 */
final class Strip {

    /** Distance between stations and between offsets, pixels. */
    static final double STEP_PX = 1.5;

    private static final double[] WIDTHS_PX = {2, 3, 4.5, 7, 11, 17, 26, 38};

    private final int reach;
    private final int polarity;
    /** Ridge strength by station and offset index; offset 0 is at index {@link #reach}. */
    final float[][] strength;
    /** Width at which that strength was found, pixels. */
    final float[][] width;
    /** Signed contrast at that width, noise units a pixel. */
    final float[][] contrast;

    /**
     * @param from parameter of the first station
     * @param perStation parameter step between stations
     * @param stations how many
     * @param reachPx how far to look to either side, pixels
     * @param widestPx widest picture of the blank to allow for at each station, pixels
     * @param polarity 1 where only what is brighter than its surroundings counts, −1 for darker, 0 where either does
     */
    Strip(
            Plane difference,
            PolynomialCurve curve,
            double from,
            double perStation,
            int stations,
            double reachPx,
            IntToDoubleFunction widestPx,
            int polarity) {
        this.polarity = polarity;
        reach = (int) Math.ceil(reachPx / STEP_PX);
        int n = 2 * reach + 1;
        strength = new float[stations][n];
        width = new float[stations][n];
        contrast = new float[stations][n];
        int[] margins = IntStream.range(0, stations)
                .map(i -> (int) Math.ceil(1.9 * widestPx.applyAsDouble(i) / STEP_PX) + 3)
                .toArray();
        int margin = IntStream.of(margins).max().orElse(0);
        float[][] raw = new float[stations][];
        for (int i = 0; i < stations; i++) {
            // As much as it and its neighbours, which are smoothed with it, look at.
            int asked =
                    Math.max(margins[i], Math.max(margins[Math.max(0, i - 1)], margins[Math.min(stations - 1, i + 1)]));
            raw[i] = profile(difference, curve, from + i * perStation, reach + asked, reach + margin);
        }
        for (int i = 0; i < stations; i++) {
            rate(smoothAlong(raw, i), margin, widestPx.applyAsDouble(i), i);
        }
    }

    /** Offset of an index, pixels. */
    double offset(double index) {
        return (index - reach) * STEP_PX;
    }

    int offsets() {
        return 2 * reach + 1;
    }

    /** @param half how far to either side to look, of the {@code room} that there is */
    private static float[] profile(Plane difference, PolynomialCurve curve, double u, int half, int room) {
        Point centre = curve.at(u);
        Point d = curve.derivative(u);
        double norm = d.norm();
        Point normal = new Point(-d.y() / norm, d.x() / norm);
        float[] out = new float[2 * room + 1];
        for (int k = -half; k <= half; k++) {
            float v = difference.sample(centre.x() + k * STEP_PX * normal.x(), centre.y() + k * STEP_PX * normal.y());
            out[k + room] = Float.isNaN(v) ? 0 : Math.max(-40, Math.min(40, v));
        }
        return out;
    }

    private static float[] smoothAlong(float[][] raw, int i) {
        float[] a = raw[Math.max(0, i - 1)];
        float[] b = raw[i];
        float[] c = raw[Math.min(raw.length - 1, i + 1)];
        float[] out = new float[b.length];
        for (int k = 0; k < out.length; k++) {
            out[k] = 0.25f * a[k] + 0.5f * b[k] + 0.25f * c[k];
        }
        return out;
    }

    private void rate(float[] profile, int margin, double widestPx, int station) {
        double[] sum = new double[profile.length + 1];
        for (int k = 0; k < profile.length; k++) {
            sum[k + 1] = sum[k] + profile[k];
        }
        for (double w : WIDTHS_PX) {
            if (w > widestPx) {
                break;
            }
            rate(sum, margin + 0.5, w, station);
        }
    }

    /** @param middle place of the first offset in the running sum; beyond the last there is as much room */
    private void rate(double[] sum, double middle, double w, int station) {
        double half = w / 2 / STEP_PX;
        double gap = Math.max(0.7, 0.35 * half);
        double flank = Math.max(2, half);
        double[] farLeft = shifted(sum, middle - half - gap - flank);
        double[] nearLeft = shifted(sum, middle - half - gap);
        double[] left = shifted(sum, middle - half);
        double[] right = shifted(sum, middle + half);
        double[] nearRight = shifted(sum, middle + half + gap);
        double[] farRight = shifted(sum, middle + half + gap + flank);
        float root = (float) Math.sqrt(w);
        for (int k = 0; k < left.length; k++) {
            double in = (right[k] - left[k]) / (2 * half);
            double a = in - (nearLeft[k] - farLeft[k]) / flank;
            double b = in - (farRight[k] - nearRight[k]) / flank;
            float c = (float) lesserStep(a, b);
            if (c * root > strength[station][k] && polarity * a >= 0) {
                strength[station][k] = c * root;
                width[station][k] = (float) w;
                contrast[station][k] = a > 0 ? c : -c;
            }
        }
    }

    /** The lesser of two steps of one sign, whichever it is; negative where the signs differ: a ridge has both alike. */
    static double lesserStep(double a, double b) {
        return Math.max(Math.min(a, b), -Math.max(a, b));
    }

    /** The running sum at a fractional place and at every whole step from there, one for each offset. */
    private double[] shifted(double[] sum, double place) {
        int first = (int) place;
        double share = place - first;
        double[] out = new double[offsets()];
        for (int k = 0; k < out.length; k++) {
            double here = sum[first + k];
            out[k] = here + share * (sum[first + k + 1] - here);
        }
        return out;
    }
}
