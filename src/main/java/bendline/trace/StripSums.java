package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.PolynomialCurve;
import bendline.image.Plane;

/** Samples a picture at equal steps across a curve, smooths a little along the curve and sums from one side to the other. */
final class StripSums {

    /** Differences beyond this count no more, noise units. */
    private static final float MOST = 40;

    private final float[] values;
    private final int width;
    private final int height;
    private final double[] x;
    private final double[] y;
    /** One step across, pixels. */
    private final double[] dx;

    private final double[] dy;

    /**
     * @param from parameter of the first station
     * @param perStation parameter step between stations
     */
    StripSums(Plane plane, PolynomialCurve curve, double from, double perStation, int stations) {
        values = plane.values();
        width = plane.width();
        height = plane.height();
        x = new double[stations];
        y = new double[stations];
        dx = new double[stations];
        dy = new double[stations];
        for (int i = 0; i < stations; i++) {
            double u = from + i * perStation;
            Point centre = curve.at(u);
            Point d = curve.derivative(u);
            double norm = d.norm();
            // Planes have the centre of their first pixel at a half.
            x[i] = centre.x() - 0.5;
            y[i] = centre.y() - 0.5;
            dx[i] = -d.y() / norm * Strip.STEP_PX;
            dy[i] = d.x() / norm * Strip.STEP_PX;
        }
    }

    /**
     * One row more than there are offsets, from far on the left, where it is zero; one column a station.
     *
     * @param reach offsets that are looked at on either side
     * @param margins how many more each station looks at beyond them; past these it counts as empty
     */
    float[][] across(int reach, int[] margins) {
        int stations = x.length;
        int[] asked = new int[stations];
        int room = 0;
        for (int i = 0; i < stations; i++) {
            // As much as it and its neighbours, which are smoothed with it, look at.
            int beside = Math.max(margins[Math.max(0, i - 1)], margins[Math.min(stations - 1, i + 1)]);
            asked[i] = reach + Math.max(margins[i], beside);
            room = Math.max(room, asked[i]);
        }
        float[][] sum = new float[2 * room + 2][stations];
        float[] row = new float[stations + 2];
        for (int j = 0; j <= 2 * room; j++) {
            sample(j - room, asked, row);
            row[0] = row[1];
            row[stations + 1] = row[stations];
            smoothed(row, sum[j], sum[j + 1]);
        }
        return sum;
    }

    private static void smoothed(float[] row, float[] before, float[] now) {
        for (int i = 0; i < now.length; i++) {
            now[i] = before[i] + (0.25f * row[i] + 0.5f * row[i + 1] + 0.25f * row[i + 2]);
        }
    }

    /** Bilinear values at one offset, that of a station behind an empty first place. */
    private void sample(int offset, int[] asked, float[] row) {
        int far = Math.abs(offset);
        for (int i = 0; i < asked.length; i++) {
            row[i + 1] = far <= asked[i] ? value(x[i] + offset * dx[i], y[i] + offset * dy[i]) : 0;
        }
    }

    private float value(double u, double v) {
        int column = (int) u;
        int line = (int) v;
        if (!(u >= 0 && v >= 0) || column + 1 >= width || line + 1 >= height) {
            return 0;
        }
        float fx = (float) (u - column);
        float fy = (float) (v - line);
        int i = line * width + column;
        float top = values[i] + fx * (values[i + 1] - values[i]);
        float bottom = values[i + width] + fx * (values[i + width + 1] - values[i + width]);
        float value = top + fy * (bottom - top);
        if (value >= -MOST) {
            return value > MOST ? MOST : value;
        }
        // What is no number counts as nothing.
        return value < 0 ? -MOST : 0;
    }
}
