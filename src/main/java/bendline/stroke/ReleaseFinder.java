package bendline.stroke;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * When the line is let go: the rig leaves the circle of its drop round the tip, and the rod unloads. The rig's part in steps: the first
 * frame clear of the circle; back to the last one on it, where it left inwards ({@link OffCircle}); the moment from the frames about these two
 * ({@link Departure#sharply}), or from two or three where there are too few; and, where it went straight outwards, that held against all
 * places for 0.08 s to either side ({@link Departure#coarsely}).
 */
final class ReleaseFinder {

    /** How far past the drop a distance must lie to be past it: line stretch and a tip ring's width. */
    private static final double TOLERANCE = 0.04;

    /** The same for a rig that is seen in one frame only before it is gone. */
    private static final double ALONE_TOLERANCE = 0.08;

    /** How far inside the circle a rig must be that flies across it. */
    private static final double CROSSING_TOLERANCE = 0.07;

    /** How far past the drop the rig must get while it is watched, and for how long it is, real seconds. */
    private static final double CLEAR_OF_IT = 1.15;

    private static final double WATCH_SECONDS = 0.1;

    /** Of the frames in which it is watched so many may show something else near the circle. */
    private static final double STRAY_SHARE = 0.15;

    /** Frames from which the drop just before the release is taken. */
    private static final int TIGHT_FRAMES = 5;

    /** Longest gap between the last frame on the circle and the first off it, real seconds. */
    static final double LONGEST_GAP_SECONDS = 0.12;

    /** From when the line counts as tight: a little before the blank is fully loaded. */
    private static final double TIGHT_BEFORE_SECONDS = 0.03;

    /** How far the drop before the release may differ from the usual one. */
    private static final double LOCAL_DIFFERENCE = 0.2;

    /**
     * How long after the butt's stop the blank may still be loaded, real seconds, three times what a release comes after it at most.
     * A rod that is dropped at once turns on for longer, and what seems a bend then is a slip of the trace.
     */
    private static final double AFTER_STOP_SECONDS = 0.1;

    /** How likely a rig that seems to leave its circle is the rig. */
    private static final double TRUST = 0.85;

    /** What a moment between two frames can be told to by a rig that is small and smears, frames. */
    private static final double LEAST_FRAMES = 0.35;

    /** How far to either side a moment is held against all places about it, real seconds. */
    private static final double CHECKED_SECONDS = 0.08;

    /**
     * How long before the last frame on the circle it may have been left, real seconds: at first by less than its places
     * err. With 20 ms casts at 240 frames a second came out 1.3 frames early in the middle.
     */
    private static final double EARLIER_SECONDS = 0.012;

    /** So many uncertainties apart two moments contradict each other: of one kind of places, and not normal. */
    private static final double CONTRADICTION = 4;

    private final RodSeries rod;
    private final double step;

    /**
     * @param rod the cast's frames
     * @param step usual time between frames, real seconds
     */
    ReleaseFinder(RodSeries rod, double step) {
        this.rod = rod;
        this.step = step;
    }

    /**
     * The release of a cast whose forward turn peaks at {@code fastest}, by all that tells of it.
     *
     * @param stop when the butt stops; NaN where it was not followed so far
     */
    Found find(double fastest, double turnEnd, Curves curves, double stop) {
        double over = Double.isNaN(stop) ? turnEnd : Math.min(turnEnd, stop + AFTER_STOP_SECONDS);
        double bend = curves.chord().argMin(fastest, over + 0.1);
        Unloading rodItself = new Unloading(rod, step, curves);
        double latest = Math.min(over + 0.25, rodItself.latest(bend, over + 0.25));
        Found byRig = byRig(bend > fastest ? Math.max(fastest, bend - step) : fastest, latest);
        List<Clue> clues = new ArrayList<>();
        if (byRig.known()) {
            clues.add(new Clue(byRig.basis(), byRig.value(), Math.hypot(byRig.sd(), LEAST_FRAMES * step), TRUST));
        }
        clues.addAll(rodItself.byBlank(fastest, over));
        if (clues.isEmpty()) {
            return Found.nothing(byRig.basis() + ", and the blank was not seen to unload");
        }
        clues.add(rodItself.byStop(stop));
        Found all = Clues.together(clues);
        return byRig.known()
                ? all
                : new Found(all.value(), all.sd(), byRig.basis() + "; estimated from the blank: " + all.basis());
    }

    /**
     * By the rig. Once the blank is loaded the line is tight and the rig on its circle; let go it flies straight, mostly out of
     * the circle, sometimes across it or inwards first. The distance grows at first like the square of time, soon in proportion.
     *
     * @param from from when the blank is fully loaded
     * @param latest when to give up
     */
    Found byRig(double from, double latest) {
        double usual = RigLine.drop(rod, rod.time()[0], from);
        if (Double.isNaN(usual)) {
            return Found.nothing("the rig was not seen often enough before the forward stroke");
        }
        int on = -1;
        Deque<Double> tight = new ArrayDeque<>();
        for (int i = 0; i < rod.size() && rod.time()[i] <= latest; i++) {
            double d = RigLine.distance(rod, i);
            if (Double.isNaN(d)) {
                continue;
            }
            double drop = local(tight, usual);
            if (rod.time()[i] < from || !(leaves(i, drop) || crosses(i, drop))) {
                on = i;
                remember(tight, i, d, from);
            } else if (on < 0 || rod.time()[i] - rod.time()[on] > LONGEST_GAP_SECONDS) {
                return Found.nothing("the rig was not seen close enough to the moment it left the tip's circle");
            } else {
                OffCircle outwards = new OffCircle(on, i, drop);
                OffCircle inwards = outwards.inwards(rod, tight(from), from, usual, step);
                return inwards == outwards ? checked(refined(outwards, from), from, latest) : refined(inwards, from);
            }
        }
        return Found.nothing("the rig was not seen leaving the circle of its drop round the tip");
    }

    /**
     * When between two frames, or a little before them: the distance takes a hundredth of a second or two to change by as much as tells it
     * from its errors.
     */
    private Found refined(OffCircle left, double from) {
        double earliest = Math.max(from - step, rod.time()[left.on()] - EARLIER_SECONDS);
        double off = rod.time()[left.off()];
        Found near = departure(from).sharply(earliest, off);
        return near.known() ? near : byFewFrames(left.drop(), left.on(), left.off(), nextSeen(left.off()));
    }

    /** A moment that all places about it together contradict came of some wrong ones. Asked only of a rig that goes straight outwards. */
    private Found checked(Found found, double from, double latest) {
        double lo = Math.max(from, found.value() - CHECKED_SECONDS);
        double hi = Math.min(latest, found.value() + CHECKED_SECONDS);
        if (!(hi > lo)) {
            return found;
        }
        Found all = departure(from).coarsely(lo, hi);
        double off = Math.abs(all.value() - found.value());
        return off > CONTRADICTION * Math.hypot(all.sd(), found.sd()) ? all : found;
    }

    private Departure departure(double loaded) {
        return new Departure(rod, step, tight(loaded), RigLine.drop(rod, rod.time()[0], loaded));
    }

    /** @param loaded from when the blank is fully loaded */
    private double tight(double loaded) {
        return loaded - Math.max(TIGHT_BEFORE_SECONDS, 3 * step);
    }

    private void remember(Deque<Double> tight, int i, double distance, double from) {
        if (rod.time()[i] >= tight(from)) {
            tight.addLast(distance);
            if (tight.size() > TIGHT_FRAMES) {
                tight.removeFirst();
            }
        }
    }

    /** Whether the rig is off the circle in a frame, does not come back but for strays, and gets clear of it as far as it is seen. */
    private boolean leaves(int i, double drop) {
        if (RigLine.distance(rod, i) <= limit(drop, i, TOLERANCE)) {
            return false;
        }
        double farthest = RigLine.distance(rod, i);
        int seen = 1;
        int back = 0;
        for (int k = i + 1; k < rod.size() && rod.time()[k] - rod.time()[i] <= Math.max(WATCH_SECONDS, 3 * step); k++) {
            double d = RigLine.distance(rod, k);
            if (!Double.isNaN(d)) {
                seen++;
                back += d <= limit(drop, k, TOLERANCE) ? 1 : 0;
                farthest = Math.max(farthest, d);
            }
        }
        if (back > STRAY_SHARE * seen) {
            return false;
        }
        return seen > 1 ? farthest > CLEAR_OF_IT * drop : farthest > limit(drop, i, ALONE_TOLERANCE);
    }

    /** Whether the rig is inside the circle in a frame, farther in the next, and nowhere near it in the one after. */
    private boolean crosses(int i, double drop) {
        int next = nextSeen(i);
        int then = next < 0 ? -1 : nextSeen(next);
        if (then < 0) {
            return false;
        }
        double room = Math.max(CROSSING_TOLERANCE * drop, 2.5 * RigLine.distanceSd(rod, i));
        double e1 = drop - RigLine.distance(rod, i);
        double e2 = drop - RigLine.distance(rod, next);
        return e1 > room && e2 > e1 + room && Math.abs(drop - RigLine.distance(rod, then)) > room;
    }

    /**
     * The drop as it looks just before the release, where the loaded blank keeps the line tight: the camera sees it shorter or
     * longer there than on the way back.
     */
    private static double local(Deque<Double> tight, double usual) {
        if (tight.size() < 3) {
            return usual;
        }
        double middle =
                tight.stream().sorted().skip(tight.size() / 2).findFirst().orElse(usual);
        return Math.abs(middle / usual - 1) < LOCAL_DIFFERENCE ? middle : usual;
    }

    private double limit(double drop, int i, double tolerance) {
        return drop + Math.max(tolerance * drop, 2.5 * RigLine.distanceSd(rod, i));
    }

    private int nextSeen(int i) {
        for (int k = i + 1; k < Math.min(rod.size(), i + 4); k++) {
            if (!Double.isNaN(RigLine.distance(rod, k))) {
                return k;
            }
        }
        return -1;
    }

    private Found byFewFrames(double drop, int on, int off, int next) {
        double t0 = rod.time()[on];
        double t1 = rod.time()[off];
        String basis = "the rig leaves the circle of its drop round the tip between two frames in which it is seen";
        double e1 = Math.abs(RigLine.distance(rod, off) - drop);
        double e2 = next < 0 ? Double.NaN : Math.abs(RigLine.distance(rod, next) - drop);
        if (!(e2 > e1)) {
            return new Found(0.5 * (t0 + t1), (t1 - t0) / Math.sqrt(12), basis);
        }
        double t2 = rod.time()[next];
        double latest = t1 - e1 * (t2 - t1) / (e2 - e1);
        double root = Math.sqrt(e1 / e2);
        double earliest = t1 - root * (t2 - t1) / (1 - root);
        double lo = Math.max(t0, Math.min(earliest, latest));
        double hi = Math.max(lo, Math.min(t1, latest));
        double sd = Math.max((hi - lo) / Math.sqrt(12), 0.15 * step);
        return new Found(0.5 * (lo + hi), Math.min(sd, (t1 - t0) / 2), basis);
    }
}
