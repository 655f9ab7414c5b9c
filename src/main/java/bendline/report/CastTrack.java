package bendline.report;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One cast frame by frame, as {@code frames.csv} and {@code curves.csv} tell of it. Arrays are shared, do not write to them; NaN
 * where nothing was measured.
 *
 * @param frame decoded frame of each entry
 * @param seconds clip time
 * @param gripX pixels of that frame's own picture
 * @param gripY pixels
 * @param tipX pixels
 * @param tipY pixels
 * @param buttAngleDeg smoothed butt angle
 * @param chordRatio hand to tip over the straight blank
 * @param tipSpeedMps metres a second
 * @param curves the blank by frame, in free lengths, x towards the water, y up, from the hand at the forward start; empty for
 *     analyses made before curves were written
 */
public record CastTrack(
        int[] frame,
        double[] seconds,
        double[] gripX,
        double[] gripY,
        double[] tipX,
        double[] tipY,
        double[] buttAngleDeg,
        double[] chordRatio,
        double[] tipSpeedMps,
        SortedMap<Integer, Polyline> curves) {

    /** Copies the map. */
    public CastTrack {
        curves = new TreeMap<>(curves);
    }

    /** Number of entries. */
    int size() {
        return frame.length;
    }

    /** The entry shown at a clip time: the last that starts at or before it. */
    int at(double clipSeconds) {
        int i = java.util.Arrays.binarySearch(seconds, clipSeconds);
        return Math.max(0, i >= 0 ? i : -i - 2);
    }

    /** Hand to tip along the blank in pixels: the median over the frames that show both; NaN if none does. */
    double freeLengthPx() {
        double[] all = new double[size()];
        int n = 0;
        for (int i = 0; i < size(); i++) {
            double l = Math.hypot(tipX[i] - gripX[i], tipY[i] - gripY[i]) / chordRatio[i];
            if (Double.isFinite(l)) {
                all[n++] = l;
            }
        }
        double[] known = java.util.Arrays.copyOf(all, n);
        java.util.Arrays.sort(known);
        return n == 0 ? Double.NaN : known[n / 2];
    }

    /** Where the hand is at a clip time or at the nearest entry that shows it; null if none does. */
    @org.jspecify.annotations.Nullable
    Point gripNear(double clipSeconds) {
        int best = -1;
        for (int i = 0; i < size(); i++) {
            boolean nearer = best < 0 || Math.abs(seconds[i] - clipSeconds) < Math.abs(seconds[best] - clipSeconds);
            if (Double.isFinite(gripX[i]) && nearer) {
                best = i;
            }
        }
        return best < 0 ? null : new Point(gripX[best], gripY[best]);
    }

    /** The curves of a stretch of frames. */
    Map<Integer, Polyline> curves(int from, int to) {
        return curves.subMap(from, to + 1);
    }
}
