package bendline.stroke;

import java.util.ArrayList;
import java.util.List;

/**
 * What the rod itself tells of the release: nothing pulls at its tip any more, so that it straightens, its tip swings past the
 * butt's direction, and the hands let it stop. Offsets are those of the casts of two simulators, by the benchmark's
 * {@code StrokeBench}; no measured source.
 */
final class Unloading {

    /** From release to straight, real seconds: 10 to 40 ms, and less than nothing where it straightened before the line went. */
    private static final double STRAIGHT_SECONDS = 0.02;

    private static final double STRAIGHT_SD_SECONDS = 0.025;

    /** From release to the tip's fastest swing past the butt, real seconds. */
    private static final double SWING_SECONDS = 0.005;

    private static final double SWING_SD_SECONDS = 0.035;

    /** From the butt's stop to the release, real seconds: −15 to 37 ms. */
    private static final double STOP_SECONDS = 0.008;

    private static final double STOP_SD_SECONDS = 0.03;

    /** Longest time in which a blank may unload unseen and its release still be told, real seconds: half a forward stroke. */
    private static final double LONGEST_UNWATCHED_SECONDS = 0.16;

    private static final double TRUST = 0.85;

    /** Share of its deepest compression to which a free blank does not come back by ringing: it keeps under a tenth of it. */
    private static final double LOADED_AGAIN = 0.25;

    /** How long after the blank is straight the line may still run off its tip, real seconds: three times what simulators show. */
    private static final double GONE_SECONDS = 0.1;

    private final RodSeries rod;
    private final double step;
    private final Curves curves;

    /**
     * @param rod the cast's frames
     * @param step usual time between frames, real seconds
     * @param curves the same, smoothed
     */
    Unloading(RodSeries rod, double step, Curves curves) {
        this.rod = rod;
        this.step = step;
        this.curves = curves;
    }

    /** What the blank tells; nothing where it was not seen to unload. */
    List<Clue> byBlank(double fastest, double turnEnd) {
        List<Clue> out = new ArrayList<>();
        double bend = curves.chord().argMin(fastest, turnEnd + 0.1);
        if (Double.isNaN(bend)) {
            return out;
        }
        double straight = curves.chord()
                .firstRise(Moments.STRAIGHT, bend, Math.min(curves.chord().end(), bend + 0.4));
        if (Double.isNaN(straight)) {
            unwatched(bend, out);
        } else {
            double sd = Math.hypot(STRAIGHT_SD_SECONDS, 0.4 * step);
            out.add(new Clue("the blank is straight again", Math.max(bend, straight - STRAIGHT_SECONDS), sd, TRUST));
        }
        if (out.isEmpty()) {
            return out;
        }
        double swing = curves.lagRate().argMin(fastest, turnEnd + 0.15);
        if (!Double.isNaN(swing)) {
            double sd = Math.hypot(SWING_SD_SECONDS, 0.5 * step);
            out.add(new Clue("the tip swings past the butt", swing - SWING_SECONDS, sd, TRUST));
        }
        return out;
    }

    /**
     * When the line is gone at the latest: nothing pulls on a blank that came straight after its deepest bend and is not loaded
     * again. What leaves the rig's circle later is another thing than the rig. Endless where the blank was not seen so.
     *
     * @param bend its deepest
     * @param until how far to look for another load, real seconds
     */
    double latest(double bend, double until) {
        double end = Math.min(curves.chord().end(), until);
        double straight = curves.chord().firstRise(Moments.STRAIGHT, bend, end);
        double again = 1 - curves.chord().at(curves.chord().argMin(straight, end));
        boolean stays = again < LOADED_AGAIN * (1 - curves.chord().at(bend));
        return stays ? straight + GONE_SECONDS : Double.POSITIVE_INFINITY;
    }

    /** What the butt's stop tells; a rod may stop without letting anything go. */
    Clue byStop(double stop) {
        return new Clue("the butt stops", stop + STOP_SECONDS, Math.hypot(STOP_SD_SECONDS, 0.4 * step), TRUST);
    }

    /** Where the unloading itself was not followed: between the last frame that shows the blank loaded and the next, if straight. */
    private void unwatched(double bend, List<Clue> out) {
        int loaded = -1;
        for (int i = 0; i < rod.size(); i++) {
            double chord = rod.chord()[i];
            if (Double.isNaN(chord) || !(rod.time()[i] >= bend - 0.5 * step)) {
                continue;
            }
            double gap = loaded < 0 ? 0 : rod.time()[i] - rod.time()[loaded];
            if (loaded >= 0 && chord >= Moments.STRAIGHT && gap <= LONGEST_UNWATCHED_SECONDS) {
                double middle = rod.time()[loaded] + 0.5 * gap - STRAIGHT_SECONDS;
                out.add(new Clue(
                        "the blank was not followed while it unloaded, loaded before a gap of " + Math.round(1000 * gap)
                                + " ms and straight after it",
                        Math.max(rod.time()[loaded], middle),
                        Math.hypot(STRAIGHT_SD_SECONDS, gap / Math.sqrt(12)),
                        TRUST));
                return;
            }
            if (chord >= Moments.STRAIGHT || rod.time()[i] > bend + LONGEST_UNWATCHED_SECONDS) {
                return;
            }
            loaded = i;
        }
    }
}
