package bendline.trace;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was chosen for the rig, without what it cannot have been. A rig has weight, so that after a frame or two in which it was not
 * seen it is near to where it was heading for, and before them near to where it comes from; another thing that happens to lie as far
 * from the tip need not be. Frames are taken together in runs along which it goes on evenly; of runs that contradict each other those are
 * kept that together hold most.
 */
final class RigRuns {

    /** How far a place may be off what the two before it foretell in one run, besides what the pull does, rod lengths. */
    private static final double WITHIN = 0.03;

    /**
     * The same from one run to the next, a tenth more than half a common drop: places may be off by a few pixels, and what two of them
     * foretell by several times that. What lies on the drop's circle by chance is mostly farther off.
     */
    private static final double BETWEEN = 0.2;

    private final @Nullable Point[] place;
    private final double[] seconds;
    private final double rodPx;

    private RigRuns(@Nullable Point[] place, double[] seconds, double rodPx) {
        this.place = place;
        this.seconds = seconds;
        this.rodPx = rodPx;
    }

    /** A stretch of frames, both ends included. */
    private record Run(int from, int to) {

        int frames() {
            return to - from + 1;
        }
    }

    /**
     * The same places without those that contradict the rest.
     *
     * @param places one a frame
     * @param rodPx hand to tip along the blank, pixels
     */
    static List<Tracked> consistent(List<Tracked> places, List<Look> looks, double rodPx) {
        @Nullable
        Point[] place = places.stream().map(r -> r.seen() ? r.position() : null).toArray(Point[]::new);
        double[] seconds = looks.stream().mapToDouble(Look::seconds).toArray();
        List<Tracked> out = new ArrayList<>(places);
        for (Run run : new RigRuns(place, seconds, rodPx).contradicted()) {
            for (int t = run.from; t <= run.to; t++) {
                out.set(t, Tracked.notSeen(null, "what was found is elsewhere than the rig can have got to"));
            }
        }
        return out;
    }

    /** Runs that are in the way of a chain of runs with most frames. */
    private List<Run> contradicted() {
        List<Run> runs = runs();
        int[] frames = new int[runs.size()];
        int[] before = new int[runs.size()];
        int last = -1;
        for (int k = 0; k < frames.length; k++) {
            before[k] = -1;
            for (int j = 0; j < k; j++) {
                if ((before[k] < 0 || frames[j] > frames[before[k]]) && follows(runs.get(j), runs.get(k))) {
                    before[k] = j;
                }
            }
            frames[k] = runs.get(k).frames() + (before[k] < 0 ? 0 : frames[before[k]]);
            last = last < 0 || frames[k] > frames[last] ? k : last;
        }
        List<Run> out = new ArrayList<>(runs);
        for (int k = last; k >= 0; k = before[k]) {
            out.remove(k);
        }
        return out;
    }

    private List<Run> runs() {
        List<Run> out = new ArrayList<>();
        int from = -1;
        for (int t = 0; t < place.length; t++) {
            boolean goesOn = from >= 0 && place[t] != null && (t - from < 2 || off(t - 1, t - 2, t, WITHIN) <= 1);
            if (from >= 0 && !goesOn) {
                out.add(new Run(from, t - 1));
                from = -1;
            }
            if (from < 0 && place[t] != null) {
                from = t;
            }
        }
        if (from >= 0) {
            out.add(new Run(from, place.length - 1));
        }
        return out;
    }

    /** Whether the rig may have come from the end of one run to the beginning of the other. */
    private boolean follows(Run a, Run b) {
        double dt = seconds[b.from] - seconds[a.to];
        double farthest = (RigFinder.FASTEST * dt + BETWEEN) * rodPx;
        if (place[a.to].distance(place[b.from]) > farthest) {
            return false;
        }
        boolean foretells = a.frames() > 1;
        boolean told = b.frames() > 1;
        return !foretells && !told
                || foretells && off(a.to, a.to - 1, b.from, BETWEEN) <= 1
                || told && off(b.from, b.from + 1, a.to, BETWEEN) <= 1;
    }

    /**
     * How far the place of a frame is off what two others foretell, over what it may be.
     *
     * @param near frame of the nearer one
     * @param far frame of the other
     * @param more what it may be off besides what the pull does, rod lengths
     */
    private double off(int near, int far, int frame, double more) {
        double dt = seconds[frame] - seconds[near];
        double base = seconds[near] - seconds[far];
        Point foretold = place[near].plus(place[near].minus(place[far]).times(dt / base));
        double pull = 0.5 * RigFinder.HARDEST_PULL * Math.abs(dt) * (Math.abs(dt) + Math.abs(base));
        return place[frame].distance(foretold) / ((pull + more) * rodPx);
    }
}
