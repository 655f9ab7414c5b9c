package bendline.trace;

import java.util.Arrays;

/** Where along a strip the rod begins and ends, from the ridge strength at its stations. */
final class RodEnds {

    /** Strength of an empty strip, noise units; what stays under it is no evidence. */
    static final double FLOOR = 4;
    /** Share of the strength just before, below which the blank is taken to have ended. */
    private static final double END_SHARE = 0.33;

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
     * A stretch of fixed length.
     *
     * @param from first station, may lie before the strip
     * @param to last station
     * @param lastEvidence last station in it that shows the blank
     * @param slackStations half of the range of positions that explain the strengths almost as well
     * @param coverage share of its stations that show the blank
     */
    record Window(int from, int to, int lastEvidence, double slackStations, double coverage) {}

    /**
     * The stretch of a known length that holds the most evidence and has the least beyond its ends: gaps, where the blank
     * vanishes against its background, then do not shorten the rod.
     *
     * @param stations length, stations
     * @param flank how far beyond the ends evidence speaks against a position, stations
     */
    static Window window(double[] q, int stations, int flank) {
        double level = Math.max(1.5 * FLOOR, 0.5 * median(q, q.length / 3, 2 * q.length / 3));
        double[] sum = new double[q.length + 1];
        for (int i = 0; i < q.length; i++) {
            sum[i + 1] = sum[i] + Math.min(1, q[i] / level);
        }
        int first = Math.min(q.length - 1, Math.max(stations / 2, stations - q.length / 4));
        double[] score = new double[q.length];
        int best = q.length - 1;
        for (int e = first; e < q.length; e++) {
            double in = between(sum, e - stations + 1, e + 1);
            double out = between(sum, e + 1, e + 1 + flank) + between(sum, e - stations + 1 - flank, e - stations + 1);
            score[e] = in - out;
            best = e == first || score[e] > score[best] ? e : best;
        }
        int low = best;
        int high = best;
        double near = score[best] - 2.5;
        for (int e = first; e < q.length; e++) {
            if (score[e] >= near) {
                low = Math.min(low, e);
                high = Math.max(high, e);
            }
        }
        int lastEvidence = best;
        while (lastEvidence > best - stations && lastEvidence > 0 && q[lastEvidence] < level) {
            lastEvidence--;
        }
        double coverage = between(sum, best - stations + 1, best + 1) / stations;
        return new Window(best - stations + 1, best, lastEvidence, (high - low) / 2.0, coverage);
    }

    private static double between(double[] sum, int from, int to) {
        return sum[clamp(to, sum.length)] - sum[clamp(from, sum.length)];
    }

    private static int clamp(int i, int length) {
        return Math.max(0, Math.min(length - 1, i));
    }

    /** Where the strength crosses half of its level just inside the end, between stations; NaN if it does not near there. */
    static double crossing(double[] q, int end, int search) {
        double level = Math.max(2 * FLOOR, median(q, end - (int) (20 / Strip.STEP_PX), end - 2));
        double half = 0.5 * level;
        double best = Double.NaN;
        for (int i = Math.max(1, end - search); i < Math.min(q.length - 1, end + search); i++) {
            boolean falls = q[i] >= half && q[i + 1] < half;
            double at = falls ? i + (q[i] - half) / (q[i] - q[i + 1]) : Double.NaN;
            if (falls && (Double.isNaN(best) || Math.abs(at - end) < Math.abs(best - end))) {
                best = at;
            }
        }
        return best;
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
