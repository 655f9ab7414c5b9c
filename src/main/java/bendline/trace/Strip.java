package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.PolynomialCurve;
import bendline.image.Plane;
import java.util.function.IntToDoubleFunction;

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
     * @param widestPx widest picture of the blank to allow for at each station, pixels; not falling
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
        int margin = (int) Math.ceil(1.9 * widestPx.applyAsDouble(stations - 1) / STEP_PX) + 3;
        float[][] raw = new float[stations][];
        for (int i = 0; i < stations; i++) {
            raw[i] = profile(difference, curve, from + i * perStation, reach + margin);
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

    private static float[] profile(Plane difference, PolynomialCurve curve, double u, int half) {
        Point centre = curve.at(u);
        Point d = curve.derivative(u);
        double norm = d.norm();
        Point normal = new Point(-d.y() / norm, d.x() / norm);
        float[] out = new float[2 * half + 1];
        for (int k = -half; k <= half; k++) {
            float v = difference.sample(centre.x() + k * STEP_PX * normal.x(), centre.y() + k * STEP_PX * normal.y());
            out[k + half] = Float.isNaN(v) ? 0 : Math.max(-40, Math.min(40, v));
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
            double half = w / 2 / STEP_PX;
            double gap = Math.max(0.7, 0.35 * half);
            double flank = Math.max(2, half);
            for (int k = 0; k < strength[station].length; k++) {
                double at = k + margin + 0.5;
                double in = mean(sum, at - half, at + half);
                double a = in - mean(sum, at - half - gap - flank, at - half - gap);
                double b = in - mean(sum, at + half + gap, at + half + gap + flank);
                if (a * b > 0 && polarity * a >= 0) {
                    double c = Math.min(Math.abs(a), Math.abs(b));
                    float s = (float) (c * Math.sqrt(w));
                    if (s > strength[station][k]) {
                        strength[station][k] = s;
                        width[station][k] = (float) w;
                        contrast[station][k] = (float) (a > 0 ? c : -c);
                    }
                }
            }
        }
    }

    /** Mean of the profile between two fractional positions, from its running sum. */
    private static double mean(double[] sum, double from, double to) {
        return (at(sum, to) - at(sum, from)) / (to - from);
    }

    private static double at(double[] sum, double position) {
        double p = Math.max(0, Math.min(sum.length - 1.001, position));
        int i = (int) p;
        return sum[i] + (p - i) * (sum[i + 1] - sum[i]);
    }
}
