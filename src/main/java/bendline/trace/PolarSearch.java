package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * All thin curves that leave the neighbourhood of the hands in one frame, without any guess from other frames.
 *
 * <p>The difference picture is unrolled into log-polar coordinates about the pivot: rows are radii in constant ratio,
 * columns directions, so that a step of one row and a shift of {@code k} columns is the same slope everywhere. In each
 * cell a ridge response is taken at several widths (a blurred blank is a wide faint ridge) and the best kept. A dynamic
 * programme over radius, direction and slope then finds, for every end cell, the best smooth curve that leads there.
 */
final class PolarSearch {

    static final int DIRECTIONS = 1080;
    static final double STEP_RAD = 2 * Math.PI / DIRECTIONS;
    /** Radius grows by this factor a row: three columns' worth, so slopes come in thirds. */
    static final double RATIO = Math.exp(3 * STEP_RAD);
    /** Largest shift a row, columns; 5/3 is 59° off the radius. */
    private static final int MOST_SHIFT = 5;

    private static final int SLOPES = 2 * MOST_SHIFT + 1;
    /** Price of changing slope by one third, in the units of strength times pixels. */
    private static final float BEND_PRICE = 15;

    private final double[] radii;
    private final int firstRowsFree;
    /** Tables of searches that are done, to be written over: they are large. */
    private final Queue<float[][][]> spares = new ConcurrentLinkedQueue<>();

    /**
     * @param innerPx radius at which curves may start, pixels
     * @param outerPx radius beyond which nothing is looked for, pixels
     */
    PolarSearch(double innerPx, double outerPx) {
        int rows = (int) Math.ceil(Math.log(outerPx / innerPx) / Math.log(RATIO)) + 1;
        radii = new double[rows];
        for (int k = 0; k < rows; k++) {
            radii[k] = innerPx * Math.pow(RATIO, k);
        }
        firstRowsFree = (int) Math.ceil(Math.log(2.5) / Math.log(RATIO));
    }

    /**
     * A thin curve.
     *
     * @param curve from near the hands outwards, pixels
     * @param score summed strength above {@link PolarGains#WORTHWHILE}, strength times pixels
     */
    record Candidate(Polyline curve, double score) {}

    /** The best distinct curves, best first. */
    List<Candidate> find(Plane difference, Point pivot, int count) {
        float[][] gain = PolarGains.of(difference, pivot, radii);
        float[][][] spare = spares.poll();
        float[][][] total = spare == null ? new float[radii.length][SLOPES][DIRECTIONS] : spare;
        float[] bestAt = new float[DIRECTIONS];
        int[] rowOf = new int[DIRECTIONS];
        float[] room = new float[DIRECTIONS];
        for (int k = 0; k < radii.length; k++) {
            for (int s = 0; s < SLOPES; s++) {
                advance(gain[k], k == 0 ? null : total[k - 1], total[k][s], start(k), s, room);
            }
            noteEnds(k, total[k], room, bestAt, rowOf);
        }
        int[] ends = IntStream.range(0, DIRECTIONS)
                .filter(c -> bestAt[c] > 0)
                .boxed()
                .sorted(Comparator.comparingDouble(c -> -bestAt[c]))
                .mapToInt(c -> c)
                .toArray();
        List<Candidate> out = new ArrayList<>();
        List<int[]> taken = new ArrayList<>();
        for (int end : ends) {
            if (out.size() == count) {
                break;
            }
            int[] columns = trace(end, rowOf[end], total);
            if (taken.stream().noneMatch(other -> shared(columns, other) > 0.5)) {
                taken.add(columns);
                out.add(new Candidate(curve(columns, pivot), bestAt[end]));
            }
        }
        spares.add(total);
        return out;
    }

    /** What a curve that starts in a row has gathered before it. */
    private float start(int k) {
        return k <= firstRowsFree ? 0 : Float.NEGATIVE_INFINITY;
    }

    /** For each direction the best that any curve has gathered when it ends there, and in which row. */
    private static void noteEnds(int k, float[][] total, float[] here, float[] bestAt, int[] rowOf) {
        System.arraycopy(total[0], 0, here, 0, DIRECTIONS);
        for (int s = 1; s < SLOPES; s++) {
            atLeast(here, total[s]);
        }
        for (int c = 0; c < DIRECTIONS; c++) {
            if (here[c] > bestAt[c]) {
                bestAt[c] = here[c];
                rowOf[c] = k;
            }
        }
    }

    private static void atLeast(float[] out, float[] other) {
        for (int c = 0; c < DIRECTIONS; c++) {
            out[c] = Math.max(out[c], other[c]);
        }
    }

    /**
     * One row outwards with one slope. Only loops that go straight through arrays of their own are made to go many cells at a time;
     * so the circle of directions is turned by copying.
     */
    private static void advance(
            float[] gain, float @Nullable [][] before, float[] now, float start, int s, float[] room) {
        if (before == null) {
            System.arraycopy(gain, 0, now, 0, DIRECTIONS);
            return;
        }
        best(before[Math.max(0, s - 1)], before[s], before[Math.min(SLOPES - 1, s + 1)], room);
        int shift = Math.floorMod(s - MOST_SHIFT, DIRECTIONS);
        System.arraycopy(room, 0, now, shift, DIRECTIONS - shift);
        System.arraycopy(room, DIRECTIONS - shift, now, 0, shift);
        extend(gain, now, start);
    }

    /** The best way into each cell: with the same slope or, at a price, from the next. */
    private static void best(float[] lower, float[] same, float[] upper, float[] out) {
        for (int c = 0; c < DIRECTIONS; c++) {
            out[c] = Math.max(Math.max(lower[c], upper[c]) - BEND_PRICE, same[c]);
        }
    }

    private static void extend(float[] gain, float[] now, float start) {
        for (int c = 0; c < DIRECTIONS; c++) {
            now[c] = Math.max(start, now[c]) + gain[c];
        }
    }

    /** Columns of the best path into an end, by row; −1 below its start. */
    private int[] trace(int column, int row, float[][][] total) {
        int[] columns = new int[row + 1];
        Arrays.fill(columns, -1);
        int c = column;
        int s = steepest(total[row], c);
        for (int k = row; k >= 0; k--) {
            columns[k] = c;
            c = Math.floorMod(c - (s - MOST_SHIFT), DIRECTIONS);
            s = k == 0 ? -1 : cameFrom(total[k - 1], c, s, start(k));
            if (s < 0) {
                break;
            }
        }
        return columns;
    }

    private static int steepest(float[][] total, int c) {
        int best = 0;
        for (int s = 1; s < SLOPES; s++) {
            best = total[s][c] > total[best][c] ? s : best;
        }
        return best;
    }

    /** The slope with which the best path came into a cell; −1 where it began in the next row. */
    private static int cameFrom(float[][] before, int c, int slope, float start) {
        float best = start;
        int where = -1;
        for (int q = Math.max(0, slope - 1); q <= Math.min(SLOPES - 1, slope + 1); q++) {
            float t = before[q][c] - (q == slope ? 0 : BEND_PRICE);
            if (t > best) {
                best = t;
                where = q;
            }
        }
        return where;
    }

    private double shared(int[] a, int[] b) {
        double same = 0;
        double all = 0;
        for (int k = 0; k < a.length; k++) {
            if (a[k] >= 0) {
                all += radii[k];
                int apart = k < b.length && b[k] >= 0 ? Math.floorMod(a[k] - b[k], DIRECTIONS) : DIRECTIONS / 2;
                if (Math.min(apart, DIRECTIONS - apart) <= 6) {
                    same += radii[k];
                }
            }
        }
        return all > 0 ? same / all : 1;
    }

    private Polyline curve(int[] columns, Point pivot) {
        List<Point> points = new ArrayList<>();
        for (int k = 0; k < columns.length; k++) {
            if (columns[k] >= 0) {
                points.add(pivot.plus(
                        Point.direction((columns[k] + 0.5) * STEP_RAD).times(radii[k])));
            }
        }
        if (points.size() == 1) {
            points.add(points.get(0).plus(new Point(1, 0)));
        }
        return new Polyline(points);
    }
}
