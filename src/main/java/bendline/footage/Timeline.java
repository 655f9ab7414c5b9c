package bendline.footage;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Turns the time stamps that a container claims into strictly increasing clip time, while the frames come by.
 *
 * <p>The rule: a frame keeps its own time stamp, minus that of the first frame. A time stamp that is missing or not later
 * than the one before is set aside and its frame spread evenly between its neighbours. Where more than {@value #RUN_LIMIT}
 * in a row are set aside the clock has been set anew: the run keeps its own steps and goes on one usual step after the last
 * good frame. A jump ahead of more than {@value #JUMP_SECONDS} s is no recording either and shrinks to one usual step.
 */
final class Timeline {

    static final int RUN_LIMIT = 8;
    static final double JUMP_SECONDS = 60;
    private static final double LEAST_STEP = 1e-6;
    private static final int STEPS_KEPT = 61;

    private final double[] steps = new double[STEPS_KEPT];
    private final double nominalStep;
    private final ArrayDeque<Double> ready = new ArrayDeque<>();
    private final List<Double> suspects = new ArrayList<>();
    private int stepCount;
    private double origin = Double.NaN;
    private double last = Double.NaN;
    private int spread;
    private int resets;
    private int jumps;
    private double firstJumpAt;
    private double largestJump;

    /** @param nominalStep the container's idea of a step, seconds; used until steps have been seen */
    Timeline(double nominalStep) {
        this.nominalStep = nominalStep > 0 && nominalStep < 2 ? nominalStep : 1.0 / 30;
    }

    /** Takes the next frame's stamp in seconds, NaN where it has none. */
    void offer(double stamp) {
        if (Double.isNaN(last)) {
            origin = stamp;
            emit(0);
            return;
        }
        if (Double.isNaN(origin) && !Double.isNaN(stamp)) {
            origin = stamp - last - usualStep() * (suspects.size() + 1);
        }
        double time = stamp - origin;
        if (time > last + LEAST_STEP) {
            accept(time);
        } else {
            suspects.add(stamp);
            if (suspects.size() > RUN_LIMIT) {
                startAnew();
            }
        }
    }

    /** No more frames will come. */
    void finish() {
        spread += suspects.size();
        emitSuspectsUpTo(last + usualStep() * (suspects.size() + 1));
    }

    boolean hasReady() {
        return !ready.isEmpty();
    }

    /** Clip time of the oldest frame that has not been taken, seconds. */
    double take() {
        return ready.remove();
    }

    /** One sentence for each kind of repair made. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (spread > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "%d frame%s had a missing, repeated or backward time stamp and %s spread evenly between %s neighbours.",
                    spread,
                    spread == 1 ? "" : "s",
                    spread == 1 ? "was" : "were",
                    spread == 1 ? "its" : "their"));
        }
        if (resets > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "The clip's clock was set back %d time%s; the frames after it follow one usual step later.",
                    resets,
                    resets == 1 ? "" : "s"));
        }
        if (jumps > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "A time stamp jumps ahead by %.0f s at %.2f s, which no recording does; it was read as one usual step.",
                    largestJump,
                    firstJumpAt));
        }
        return notes;
    }

    private void accept(double claimed) {
        double time = claimed;
        double step = time - last;
        if (step > JUMP_SECONDS) {
            double usual = usualStep() * (suspects.size() + 1);
            origin += step - usual;
            time = last + usual;
            firstJumpAt = jumps == 0 ? last : firstJumpAt;
            largestJump = Math.max(largestJump, step);
            jumps++;
        }
        spread += suspects.size();
        emitSuspectsUpTo(time);
        emit(time);
    }

    private void emitSuspectsUpTo(double end) {
        double start = last;
        int n = suspects.size();
        for (int i = 1; i <= n; i++) {
            emit(start + (end - start) * i / (n + 1));
        }
        suspects.clear();
    }

    private void startAnew() {
        boolean rising = true;
        for (int i = 1; i < suspects.size(); i++) {
            double step = suspects.get(i) - suspects.get(i - 1);
            rising &= step > LEAST_STEP && step < JUMP_SECONDS;
        }
        if (rising) {
            resets++;
            origin = suspects.get(0) - last - usualStep();
            for (double stamp : suspects) {
                emit(stamp - origin);
            }
            suspects.clear();
        } else {
            finish();
        }
    }

    private void emit(double time) {
        if (!Double.isNaN(last)) {
            steps[stepCount++ % STEPS_KEPT] = time - last;
        }
        last = time;
        ready.add(time);
    }

    private double usualStep() {
        int n = Math.min(stepCount, STEPS_KEPT);
        if (n == 0) {
            return nominalStep;
        }
        double[] seen = Arrays.copyOf(steps, n);
        Arrays.sort(seen);
        return seen[n / 2];
    }
}
