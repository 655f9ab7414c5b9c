package bendline.stroke;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The pull on the rod's tip and what the bend holds, one entry per bend arc. Arrays are shared, do not write to them; NaN where
 * nothing was read. All empty where no stiffness of the blank is known.
 *
 * @param clipSeconds clip time
 * @param realSeconds real time
 * @param newtons size of the pull
 * @param newtonsSd its 68 % uncertainty
 * @param directionRad where it pulls: 0 towards the water, π/2 up, π back
 * @param directionSd its 68 % uncertainty, radians
 * @param energyJ energy held in the bend
 * @param energySd its 68 % uncertainty
 * @param bendCentre mean place of the bend, share of the length from hand to tip
 * @param withoutInertiaN size of the pull if the blank had no mass: what its inertia and weight add to the bend
 * @param basis what it rests on, or why nothing was read
 * @param doubt by how much what was told of the rod contradicts its ring or the rig, as a power of e of the stiffness; 0 for not
 */
public record LoadCurve(
        double[] clipSeconds,
        double[] realSeconds,
        double[] newtons,
        double[] newtonsSd,
        double[] directionRad,
        double[] directionSd,
        double[] energyJ,
        double[] energySd,
        double[] bendCentre,
        double[] withoutInertiaN,
        String basis,
        double doubt) {

    /** Of a peak that is one, the frame before or after shows at least this share. */
    private static final double SUPPORT = 0.5;

    private static final int MEAN_OF = 40;

    /** Nothing was read. */
    static LoadCurve nothing(String why) {
        double[] none = {};
        return new LoadCurve(none, none, none, none, none, none, none, none, none, none, why, 0);
    }

    /** Whether there is anything. */
    public boolean known() {
        return clipSeconds.length > 0;
    }

    /** Whether anything was read from the bend; without a stiffness the rig alone tells the pull, and nothing tells the energy. */
    boolean bendRead() {
        return Arrays.stream(energyJ).anyMatch(Double::isFinite);
    }

    /**
     * The entry between forward start and release whose lower end is highest: a wild reading says so by its uncertainty and is passed
     * over, and so is one that neither of its neighbours supports. −1 for none.
     */
    int peak(double[] values, double[] sds, StrokeReader.Readings all) {
        double from = all.moments().forwardStart();
        double to =
                all.release().known() ? all.release().value() : all.moments().deepestLoad();
        int[] told = IntStream.range(0, size())
                .filter(i -> realSeconds[i] >= from - 1e-9 && realSeconds[i] <= to + 1e-9)
                .filter(i -> Double.isFinite(values[i] - sds[i]))
                .toArray();
        int best = -1;
        for (int k = 0; k < told.length; k++) {
            int i = told[k];
            double least = values[i] - sds[i];
            boolean supported = k > 0 && reaches(told[k - 1], values, sds, least)
                    || k + 1 < told.length && reaches(told[k + 1], values, sds, least);
            if (supported && (best < 0 || least > values[best] - sds[best])) {
                best = i;
            }
        }
        return best;
    }

    private static boolean reaches(int i, double[] values, double[] sds, double least) {
        return values[i] + sds[i] >= SUPPORT * least;
    }

    /**
     * The mean pull over some time about each entry, straight between entries: NaN where that time is not all between two moments or
     * one entry is farther from the next than may be bridged. Errors are taken to be alike in all of them.
     *
     * @param over that time, real seconds
     * @param bridge longest step between entries
     */
    LoadCurve averaged(double over, double from, double to, double bridge) {
        int[] read = IntStream.range(0, size())
                .filter(i -> Double.isFinite(newtons[i] + newtonsSd[i]))
                .toArray();
        double[] mean = new double[size()];
        double[] sd = new double[size()];
        for (int i = 0; i < size(); i++) {
            double t = realSeconds[i];
            boolean inside = t - over / 2 >= from - 1e-9 && t + over / 2 <= to + 1e-9;
            mean[i] = inside ? mean(newtons, read, t - over / 2, over, bridge) : Double.NaN;
            sd[i] = inside ? mean(newtonsSd, read, t - over / 2, over, bridge) : Double.NaN;
        }
        return new LoadCurve(
                clipSeconds,
                realSeconds,
                mean,
                sd,
                directionRad,
                directionSd,
                energyJ,
                energySd,
                bendCentre,
                withoutInertiaN,
                basis,
                doubt);
    }

    private double mean(double[] values, int[] read, double from, double over, double bridge) {
        double sum = 0;
        for (int k = 0; k < MEAN_OF; k++) {
            double t = from + over * (k + 0.5) / MEAN_OF;
            int j = 1;
            while (j < read.length && realSeconds[read[j]] < t) {
                j++;
            }
            if (j >= read.length
                    || realSeconds[read[j - 1]] > t
                    || realSeconds[read[j]] - realSeconds[read[j - 1]] > bridge) {
                return Double.NaN;
            }
            double f = (t - realSeconds[read[j - 1]]) / (realSeconds[read[j]] - realSeconds[read[j - 1]]);
            sum += values[read[j - 1]] + f * (values[read[j]] - values[read[j - 1]]);
        }
        return sum / MEAN_OF;
    }

    /** Number of entries. */
    public int size() {
        return clipSeconds.length;
    }
}
