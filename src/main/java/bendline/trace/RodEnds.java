package bendline.trace;

import java.util.Arrays;

/** Where along a strip the rod begins and ends, from the ridge strength at its stations. */
final class RodEnds {

    /** Strength of an empty strip, noise units; what stays under it is no evidence. */
    static final double FLOOR = 4;
    /** Share of the strength just before, below which the blank is taken to have ended. */
    private static final double END_SHARE = 0.33;

    /** Strength of an empty line when only what lies right on it is asked. */
    private static final double ON_LINE_FLOOR = 2.2;

    private RodEnds() {}

    /** The last station outwards (or inwards) from a start up to which strength keeps up with its neighbourhood. */
    static int end(double[] q, int start, int direction) {
        int near = (int) (30 / Strip.STEP_PX);
        double sum = 0;
        double bestSum = 0;
        int best = start;
        double level = median(q, start - near, start + near);
        for (int i = start; i >= 0 && i < q.length; i += direction) {
            double threshold = Math.max(FLOOR, END_SHARE * level);
            sum += Math.min(q[i], 3 * threshold) - threshold;
            if (sum >= bestSum) {
                bestSum = sum;
                best = i;
                // The blank thins towards the tip and its contrast falls with it: compare with what came just before.
                level = median(q, i - near, i + near / 4 * direction);
            }
            if (sum < bestSum - 25 * threshold) {
                break;
            }
        }
        return best;
    }

    /**
     * The outer end.
     *
     * @param station fractional station
     * @param sdStations 68 % uncertainty
     * @param level strength that counts as showing the blank
     */
    record Tip(double station, double sdStations, double level) {}

    /**
     * The outer end along a line that is known to about a pixel: strengths above a low level speak for the rod, below it
     * against; the end is where their sum is largest, so that a gap is crossed if enough follows.
     *
     * @param start station that surely shows the blank
     * @param seen station up to which the blank was seen while searching
     */
    static Tip tip(double[] q, int start, int seen) {
        double usual = median(q, start, seen);
        double level = Math.max(ON_LINE_FLOOR, 0.2 * usual);
        double sum = 0;
        double best = Double.NEGATIVE_INFINITY;
        int end = start;
        for (int i = start; i < q.length; i++) {
            sum += Math.min(q[i], 2.5 * level) - level;
            if (sum >= best) {
                best = sum;
                end = i;
            }
        }
        int low = end;
        int high = end;
        sum = 0;
        for (int i = end; i > start && sum < 3 * level; i--) {
            sum += Math.min(q[i], 2.5 * level) - level;
            low = i;
        }
        sum = 0;
        for (int i = end + 1; i < q.length && sum < 3 * level; i++) {
            sum += level - Math.min(q[i], 2.5 * level);
            high = i;
        }
        double station = crossing(q, end);
        return new Tip(station, Math.max(0.3, (high - low) / 4.0), level);
    }

    /** Where the strength falls through half of what it is just inside the end, between stations. */
    private static double crossing(double[] q, int end) {
        double half = 0.5 * median(q, end - (int) (12 / Strip.STEP_PX), end - 1);
        for (int i = Math.max(1, end - 3); i < Math.min(q.length - 1, end + 3); i++) {
            if (q[i] >= half && q[i + 1] < half) {
                return i + (q[i] - half) / (q[i] - q[i + 1]);
            }
        }
        return end;
    }

    /** Median strength between two stations, both included; 0 outside the strip. */
    static double median(double[] q, int from, int to) {
        int first = Math.max(0, Math.min(from, to));
        int past = Math.max(first, Math.min(q.length, Math.max(from, to) + 1));
        double[] part = Arrays.copyOfRange(q, first, past);
        Arrays.sort(part);
        return part.length == 0 ? 0 : part[part.length / 2];
    }
}
