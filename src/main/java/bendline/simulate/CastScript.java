package bendline.simulate;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;

/**
 * What the hands do in one cast. Times are real seconds, angles degrees in the words of the design: 0 forward and
 * level, 90 upright, 180 level behind.
 *
 * @param startSeconds start of the backswing, from the start of the clip, 0.3 to 120
 * @param readyAngleDeg butt angle before the backswing, 20 to 90
 * @param layBackDeg butt angle at the end of the backswing, 100 to 190
 * @param backswingSeconds the whole backward move, 0.4 to 4
 * @param settleSeconds end of the backward move to start of the push, −0.5 to 3; negative where they overlap
 * @param feelSeconds how long the angler waits at most after the settle until the rig pulls, 0 to 3; 0 for one who does not feel for it
 * @param pushSeconds how long the hands travel forward, 0.15 to 1
 * @param turnDelaySeconds start of the push to start of the turn, −0.3 to 0.6; negative where the turn leads
 * @param turnSeconds the whole forward turn, 0.12 to 1
 * @param stopAngleDeg butt angle at the end of the turn, 20 to 90
 * @param releaseDirectionDeg direction of flight the angler aims at; the line is let go when the rig would fly furthest, 10
 *     to 80
 * @param releaseLateSeconds how much later than that, −0.06 to 0.1; negative for too early
 * @param holdSeconds the rod is held after the turn, 0.2 to 5
 * @param dropDeg how far the rod is dropped after release, 0 to 70; 0 for a rod that is held
 * @param dropDelaySeconds release to start of the drop, 0 to 1
 * @param dropSeconds the whole drop, 0.1 to 1.5
 * @param putDown whether the angler thinks better of it after the backswing and puts the rod down
 * @param rushedFlat how plainly the backswing is flat and rushed
 * @param tipDrop how plainly the tip is dropped too early
 * @param body what the body does of its own; null where the trunk only leans after the hands
 */
public record CastScript(
        double startSeconds,
        double readyAngleDeg,
        double layBackDeg,
        double backswingSeconds,
        double settleSeconds,
        double feelSeconds,
        double pushSeconds,
        double turnDelaySeconds,
        double turnSeconds,
        double stopAngleDeg,
        double releaseDirectionDeg,
        double releaseLateSeconds,
        double holdSeconds,
        double dropDeg,
        double dropDelaySeconds,
        double dropSeconds,
        boolean putDown,
        Severity rushedFlat,
        Severity tipDrop,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable BodyScript body) {

    /** Checks the ranges. */
    public CastScript {
        Ranges.check("cast start (s)", startSeconds, 0.3, 120);
        Ranges.check("ready angle (deg)", readyAngleDeg, 20, 90);
        Ranges.check("lay-back (deg)", layBackDeg, 100, 190);
        Ranges.check("backswing (s)", backswingSeconds, 0.4, 4);
        Ranges.check("settle (s)", settleSeconds, -0.5, 3);
        Ranges.check("feel (s)", feelSeconds, 0, 3);
        Ranges.check("push (s)", pushSeconds, 0.15, 1);
        Ranges.check("turn delay (s)", turnDelaySeconds, -0.3, 0.6);
        Ranges.check("turn (s)", turnSeconds, 0.12, 1);
        Ranges.check("stop angle (deg)", stopAngleDeg, 20, 90);
        Ranges.check("release direction (deg)", releaseDirectionDeg, 10, 80);
        Ranges.check("release late by (s)", releaseLateSeconds, -0.06, 0.1);
        Ranges.check("hold (s)", holdSeconds, 0.2, 5);
        Ranges.check("drop (deg)", dropDeg, 0, 70);
        Ranges.check("drop delay (s)", dropDelaySeconds, 0, 1);
        Ranges.check("drop time (s)", dropSeconds, 0.1, 1.5);
    }

    /**
     * A cast between the textbook one and the faulty one.
     *
     * @param startSeconds start of the backswing
     * @param rush 0 for an unhurried, well laid-back backswing with a settle, 1 for a plainly flat and rushed one
     * @param drop 0 for a rod held after release, 1 for one dropped at once and deep
     */
    public static CastScript of(double startSeconds, double rush, double drop) {
        Ranges.check("degree of the rush", rush, 0, 1);
        Ranges.check("degree of the drop", drop, 0, 1);
        return new CastScript(
                startSeconds,
                58,
                between(141, 169, rush),
                between(2.45, 1.10, rush),
                between(0.3, -0.08, rush),
                1.1 * (1 - rush) * (1 - rush),
                between(0.38, 0.48, rush),
                between(0.10, 0.19, rush),
                between(0.285, 0.42, rush),
                62,
                41,
                0,
                1.0,
                46 * drop,
                between(0.10, 0.02, drop),
                between(0.34, 0.22, drop),
                false,
                Severity.of(rush),
                Severity.of(drop),
                null);
    }

    /** The same cast, but the angler puts the rod down after the backswing. */
    public CastScript puttingDown() {
        return new CastScript(
                startSeconds,
                readyAngleDeg,
                layBackDeg,
                backswingSeconds,
                settleSeconds,
                feelSeconds,
                pushSeconds,
                turnDelaySeconds,
                turnSeconds,
                stopAngleDeg,
                releaseDirectionDeg,
                releaseLateSeconds,
                holdSeconds,
                dropDeg,
                dropDelaySeconds,
                dropSeconds,
                true,
                Severity.NONE,
                Severity.NONE,
                body);
    }

    /** The same cast, the rod held for another time after the turn, real seconds. */
    public CastScript holding(double seconds) {
        return new CastScript(
                startSeconds,
                readyAngleDeg,
                layBackDeg,
                backswingSeconds,
                settleSeconds,
                feelSeconds,
                pushSeconds,
                turnDelaySeconds,
                turnSeconds,
                stopAngleDeg,
                releaseDirectionDeg,
                releaseLateSeconds,
                seconds,
                dropDeg,
                dropDelaySeconds,
                dropSeconds,
                putDown,
                rushedFlat,
                tipDrop,
                body);
    }

    /** The same cast with another settle. */
    CastScript withSettle(double seconds) {
        return new CastScript(
                startSeconds,
                readyAngleDeg,
                layBackDeg,
                backswingSeconds,
                seconds,
                feelSeconds,
                pushSeconds,
                turnDelaySeconds,
                turnSeconds,
                stopAngleDeg,
                releaseDirectionDeg,
                releaseLateSeconds,
                holdSeconds,
                dropDeg,
                dropDelaySeconds,
                dropSeconds,
                putDown,
                rushedFlat,
                tipDrop,
                body);
    }

    /**
     * The same cast a little otherwise.
     *
     * @param slower factor on the backswing's time
     * @param layBack added to the lay-back, degrees
     * @param stop added to the stop angle, degrees
     * @param lazier factor on the turn's time
     */
    CastScript varied(double slower, double layBack, double stop, double lazier) {
        return new CastScript(
                startSeconds,
                readyAngleDeg,
                layBackDeg + layBack,
                backswingSeconds * slower,
                settleSeconds,
                feelSeconds,
                pushSeconds,
                turnDelaySeconds,
                turnSeconds * lazier,
                stopAngleDeg + stop,
                releaseDirectionDeg,
                releaseLateSeconds,
                holdSeconds,
                dropDeg,
                dropDelaySeconds,
                dropSeconds,
                putDown,
                rushedFlat,
                tipDrop,
                body);
    }

    /**
     * The same cast, made with a body of its own.
     *
     * @param pushSeconds how long the hands travel forward
     * @param turnDelaySeconds start of the push to start of the turn
     * @param turnSeconds the whole forward turn
     * @param body what the body does
     */
    public CastScript embodied(double pushSeconds, double turnDelaySeconds, double turnSeconds, BodyScript body) {
        return new CastScript(
                startSeconds,
                readyAngleDeg,
                layBackDeg,
                backswingSeconds,
                settleSeconds,
                feelSeconds,
                pushSeconds,
                turnDelaySeconds,
                turnSeconds,
                stopAngleDeg,
                releaseDirectionDeg,
                releaseLateSeconds,
                holdSeconds,
                dropDeg,
                dropDelaySeconds,
                dropSeconds,
                putDown,
                rushedFlat,
                tipDrop,
                body);
    }

    /** The push starts here at the earliest, seconds. */
    double pushFrom() {
        return startSeconds + backswingSeconds + settleSeconds;
    }

    /** When a cast that waits its longest is over and the rod comes down, seconds. */
    double overSeconds() {
        return putDown
                ? startSeconds + backswingSeconds + 4.2
                : pushFrom() + feelSeconds + turnDelaySeconds + turnSeconds + holdSeconds + 0.9;
    }

    private static double between(double at0, double at1, double degree) {
        return at0 + (at1 - at0) * degree;
    }
}
