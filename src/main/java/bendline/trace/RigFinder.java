package bendline.trace;

import bendline.geometry.Point;
import bendline.image.Plane;
import bendline.scene.Mark.Part;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Follows the rig: of the compact moving things in each frame, one or none, such that the path is smooth and the distance
 * from the tip is the drop as long as the line is held. Chosen over all frames at once by a dynamic programme over pairs of
 * neighbouring frames, so that acceleration, not just displacement, is what a path has to pay for.
 */
final class RigFinder {

    /** Largest acceleration of a cast rig in rod lengths per second squared, about 270 m/s²; from the physics of the sample strokes' speeds. */
    static final double HARDEST_PULL = 80;

    /** Fastest a rig goes, rod lengths per second, about 65 m/s: what jumps farther is something else. */
    static final double FASTEST = 20;
    /** Off the drop's circle a rig is in flight; slower than this, in rod lengths per second, it is something else. */
    private static final double SLOWEST_FLIGHT = 2;

    private static final double ON_CIRCLE = 4;
    private static final double INSIDE_CIRCLE = 1;
    private static final double IN_FLIGHT = 1;
    private static final double LOITERING = -2;
    private static final double MOST_PRICE = 8;
    private static final double START_PRICE = 3;
    private static final double FORBIDDEN = 200;
    /** Shortest and longest drop looked for, in rod lengths; common practice, no source. */
    private static final double LEAST_DROP = 0.1;

    private static final double MOST_DROP = 0.75;

    /** How far a told drop is off in the picture: measured roughly, swung towards the phone, on a rod whose handle is guessed; of its logarithm. */
    private static final double TOLD_SD = 0.2;

    /** Mass of a blob that a user marked, and what going through it is worth: more than any way round it. */
    private static final double MARKED = Double.POSITIVE_INFINITY;

    private static final double SURE = 1e6;

    /** A thing from which line goes on for so much is a piece of it; one so near to the line's end hangs on it, pixels. */
    private static final double GOES_ON_PX = 25;

    private static final double AT_END_PX = 12;

    /** What the end of a line counts for where no rig is seen there, as the mass of a blob. */
    private static final double END_MASS = 60;

    private final double rodPx;
    private final double toldDropPx;
    private final BlobFinder finder;
    private final List<List<Blob>> blobs = new ArrayList<>();

    /**
     * @param rodPx hand to tip along the blank, pixels
     * @param dropShare tip to rig over that length as far as it was told; NaN where it was not
     */
    RigFinder(double rodPx, double dropShare) {
        this.rodPx = rodPx;
        this.toldDropPx = dropShare * rodPx;
        this.finder = new BlobFinder(rodPx);
    }

    /** What may be the rig in a frame; may be asked by several threads. */
    List<Blob> things(Plane difference, @Nullable Fit rod) {
        boolean[] covered = finder.covered(difference, rod);
        List<Blob> things = finder.find(difference, rod, covered);
        return rod == null ? things : byLine(things, new TipLine(difference, covered, tip(rod), rodPx));
    }

    /** Takes the next frame's. */
    void add(List<Blob> things) {
        blobs.add(things);
    }

    /** Without pieces of the line, and with the place where it ends if nothing is seen there. */
    private static List<Blob> byLine(List<Blob> things, TipLine line) {
        List<Blob> out = new ArrayList<>();
        for (Blob b : things) {
            if (!line.goesOn(b, GOES_ON_PX)) {
                out.add(b);
            }
        }
        Point end = line.end();
        if (end != null && out.stream().noneMatch(b -> b.centre().distance(end) < b.lengthPx() / 2 + AT_END_PX)) {
            out.add(new Blob(end, END_MASS, 0, 0, true));
        }
        return out;
    }

    static Point tip(Fit rod) {
        return rod.line().at(rod.line().length() + rod.hiddenPx());
    }

    /**
     * One entry a frame; where a mark tells the rig's place, or that it can't be seen, that is all there is to choose from.
     *
     * @param again looks once more where it was missed
     */
    List<Tracked> choose(List<Look> looks, Map<Integer, Pin> pins, RigAgain again) {
        RigFinder told = new RigFinder(rodPx, toldDropPx / rodPx);
        told.blobs.addAll(blobs);
        pins.forEach((t, pin) -> {
            if (pin.mark().tells(Part.RIG)) {
                told.blobs.set(t, pin.rig() == null ? List.of() : List.of(new Blob(pin.rig(), MARKED, 1, 1)));
            }
        });
        return told.choose(looks, again);
    }

    private List<Tracked> choose(List<Look> looks, RigAgain again) {
        int n = looks.size();
        double drop = drop(looks);
        double[][][] score = new double[n][][];
        int[][][] from = new int[n][][];
        for (int t = 0; t < n; t++) {
            int now = blobs.get(t).size() + 1;
            int before = t == 0 ? 1 : blobs.get(t - 1).size() + 1;
            score[t] = new double[now][before];
            from[t] = new int[now][before];
            for (int k = 0; k < now; k++) {
                for (int q = 0; q < before; q++) {
                    double own = reward(t, k, q, looks, drop);
                    score[t][k][q] = own + (t == 0 ? 0 : best(t, k, q, score[t - 1], from[t], looks, drop));
                }
            }
        }
        return read(score, from, looks, drop, again);
    }

    private double best(int t, int k, int q, double[][] score, int[][] from, List<Look> looks, double drop) {
        double best = Double.NEGATIVE_INFINITY;
        Blob now = at(t, k);
        Blob before = at(t - 1, q);
        double dt = looks.get(t).seconds() - looks.get(t - 1).seconds();
        for (int r = 0; r < score[q].length; r++) {
            Blob earlier = t >= 2 ? at(t - 2, r) : null;
            double start =
                    now != null && before == null ? startPrice(now, looks.get(t).chosen(), drop) : 0;
            double s = score[q][r] - start - price(now, before, earlier, dt);
            if (s > best) {
                best = s;
                from[k][q] = r;
            }
        }
        return best;
    }

    private double price(@Nullable Blob now, @Nullable Blob before, @Nullable Blob earlier, double dt) {
        if (now == null || before == null) {
            return 0;
        }
        if (now.centre().distance(before.centre()) > FASTEST * rodPx * dt + 4) {
            return FORBIDDEN;
        }
        if (earlier == null) {
            return 0;
        }
        double pull = HARDEST_PULL * rodPx * dt * dt + 2;
        Point expected = before.centre().times(2).minus(earlier.centre());
        return Math.min(MOST_PRICE, now.centre().distance(expected) / pull);
    }

    /** A path may begin, or go on after a gap, on the drop's circle only: a rig that has flown does not come back. */
    private double startPrice(Blob now, @Nullable Fit rod, double drop) {
        if (rod == null || Double.isNaN(drop)) {
            return FORBIDDEN;
        }
        double off = now.centre().distance(tip(rod)) - drop;
        return off < 0.12 * rodPx ? START_PRICE : FORBIDDEN;
    }

    private @Nullable Blob at(int t, int k) {
        return k < blobs.get(t).size() ? blobs.get(t).get(k) : null;
    }

    private double reward(int t, int k, int q, List<Look> looks, double drop) {
        Blob blob = at(t, k);
        if (blob == null) {
            return 0;
        }
        double clear = Math.min(1, blob.mass() / 120);
        if (blob.mass() == MARKED) {
            return SURE;
        }
        Fit rod = looks.get(t).chosen();
        if (rod != null && !Double.isNaN(drop)) {
            double beyond = blob.centre().distance(tip(rod)) - drop;
            if (blob.lineEnd() && Math.abs(beyond) > RigPlaces.TIGHT * drop) {
                return LOITERING;
            }
            double off = beyond / (0.05 * rodPx);
            double on = Math.exp(-0.5 * off * off);
            if (off < 0 || on > 0.1) {
                return clear * Math.max(INSIDE_CIRCLE, ON_CIRCLE * on);
            }
        }
        Blob before = t == 0 ? null : at(t - 1, q);
        double dt = t == 0 ? 1 : looks.get(t).seconds() - looks.get(t - 1).seconds();
        boolean flies = before != null && blob.centre().distance(before.centre()) > SLOWEST_FLIGHT * rodPx * dt;
        return flies ? clear * IN_FLIGHT : LOITERING;
    }

    /** The distance from the tip at which compact things are found most often; NaN if there is none. */
    private double drop(List<Look> looks) {
        int bins = 130;
        double width = (MOST_DROP - LEAST_DROP) / bins;
        double[] votes = new double[bins];
        for (int t = 0; t < looks.size(); t++) {
            Fit rod = looks.get(t).chosen();
            boolean[] voted = new boolean[bins];
            for (Blob b : rod == null ? List.<Blob>of() : blobs.get(t)) {
                int bin = (int) ((b.centre().distance(tip(rod)) / rodPx - LEAST_DROP) / width);
                if (bin >= 0 && bin < bins && !voted[bin]) {
                    voted[bin] = true;
                    votes[bin] +=
                            Math.min(1, b.mass() / 120) * likely(LEAST_DROP * rodPx + (bin + 0.5) * width * rodPx);
                }
            }
        }
        double best = 0;
        double at = Double.NaN;
        for (int i = 0; i < bins; i++) {
            double sum = Arrays.stream(votes, Math.max(0, i - 3), Math.min(bins, i + 4))
                    .sum();
            if (sum > best) {
                best = sum;
                at = (LEAST_DROP + (i + 0.5) * width) * rodPx;
            }
        }
        return best >= 5 ? at : Double.NaN;
    }

    /** What a drop counts for, beside the one that was told. */
    private double likely(double dropPx) {
        double off = Math.log(dropPx / toldDropPx) / TOLD_SD;
        return Double.isNaN(off) ? 1 : Math.exp(-0.5 * off * off);
    }

    private List<Tracked> read(double[][][] score, int[][][] from, List<Look> looks, double drop, RigAgain again) {
        int n = score.length;
        if (n == 0) {
            return List.of();
        }
        int k = 0;
        int q = 0;
        for (int a = 0; a < score[n - 1].length; a++) {
            for (int b = 0; b < score[n - 1][a].length; b++) {
                if (score[n - 1][a][b] > score[n - 1][k][q]) {
                    k = a;
                    q = b;
                }
            }
        }
        @Nullable Blob[] path = new Blob[n];
        for (int t = n - 1; t >= 0; t--) {
            path[t] = at(t, k);
            int r = from[t][k][q];
            k = q;
            q = r;
        }
        List<Tracked> kept = kept(path, RigPlaces.of(path, looks, drop), looks);
        kept = with(new ReeledIn(blobs, looks, rodPx, drop).before(kept), kept, path, looks, drop);
        return with(again.found(kept, looks), kept, path, looks, drop);
    }

    /**
     * With what was found in further frames.
     *
     * @param more what was found there
     * @param path what was chosen before, which takes that, too
     */
    private static List<Tracked> with(
            Map<Integer, Blob> more, List<Tracked> kept, @Nullable Blob[] path, List<Look> looks, double drop) {
        more.forEach((t, blob) -> path[t] = blob);
        List<Tracked> places = RigPlaces.of(path, looks, drop);
        return IntStream.range(0, path.length)
                .mapToObj(t -> more.containsKey(t) ? places.get(t) : kept.get(t))
                .toList();
    }

    /** Without what contradicts the rest; what a user marked stays all the same. */
    private List<Tracked> kept(@Nullable Blob[] path, List<Tracked> places, List<Look> looks) {
        List<Tracked> consistent = RigRuns.consistent(places, looks, rodPx);
        return IntStream.range(0, path.length)
                .mapToObj(t -> path[t] != null && path[t].mass() == MARKED ? places.get(t) : consistent.get(t))
                .toList();
    }
}
