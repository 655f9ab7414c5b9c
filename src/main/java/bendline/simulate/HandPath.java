package bendline.simulate;

import java.util.ArrayList;
import java.util.List;

/**
 * The driven motion of the hands: a ready position plus moves that each add a smooth step to hand and angle, plus the
 * small sway of a person standing. A step runs along the quintic of least jerk, so speed and acceleration are
 * continuous. Moves may overlap; they add up.
 */
final class HandPath {

    /**
     * One smooth step.
     *
     * @param start seconds
     * @param seconds how long it takes
     * @param dx added to the hand, metres
     * @param dy added to the hand, metres
     * @param turn added to the butt angle, radians
     */
    record Move(double start, double seconds, double dx, double dy, double turn) {}

    private static final double[] SWAY_HZ = {0.31, 0.73, 1.37};

    private final double x;
    private final double y;
    private final double angle;
    private final List<Move> moves = new ArrayList<>();
    private final double[] swayPhase = new double[9];
    private final double swayM;
    private final double swayRad;

    /**
     * @param x ready position of the upper hand, metres
     * @param y ready position of the upper hand, metres
     * @param angle ready butt angle, radians
     * @param swayM size of the standing sway of the hand, metres
     * @param seed of the sway
     */
    HandPath(double x, double y, double angle, double swayM, long seed) {
        this.x = x;
        this.y = y;
        this.angle = angle;
        this.swayM = swayM;
        this.swayRad = swayM * 0.5;
        java.util.Random random = new java.util.Random(seed);
        for (int i = 0; i < swayPhase.length; i++) {
            swayPhase[i] = random.nextDouble() * 2 * Math.PI;
        }
    }

    private HandPath(HandPath other) {
        this.x = other.x;
        this.y = other.y;
        this.angle = other.angle;
        this.swayM = other.swayM;
        this.swayRad = other.swayRad;
        System.arraycopy(other.swayPhase, 0, swayPhase, 0, swayPhase.length);
        moves.addAll(other.moves);
    }

    HandPath copy() {
        return new HandPath(this);
    }

    /** Adds a move; those already begun cannot be taken back. */
    void add(Move move) {
        moves.add(move);
    }

    /** Where the hands are at a time in seconds. */
    HandPose at(double t) {
        double[] hx = {x, 0, 0};
        double[] hy = {y, 0, 0};
        double[] ha = {angle, 0, 0};
        double[] step = new double[3];
        for (Move m : moves) {
            if (t <= m.start) {
                continue;
            }
            quintic(t - m.start, m.seconds, step);
            for (int d = 0; d < 3; d++) {
                hx[d] += m.dx * step[d];
                hy[d] += m.dy * step[d];
                ha[d] += m.turn * step[d];
            }
        }
        sway(t, hx, 0, swayM);
        sway(t, hy, 3, swayM * 0.6);
        sway(t, ha, 6, swayRad);
        return new HandPose(hx[0], hy[0], hx[1], hy[1], hx[2], hy[2], ha[0], ha[1]);
    }

    private void sway(double t, double[] value, int phase, double size) {
        for (int i = 0; i < SWAY_HZ.length; i++) {
            double w = 2 * Math.PI * SWAY_HZ[i];
            double a = size / (1 + 2 * i);
            double p = w * t + swayPhase[phase + i];
            value[0] += a * Math.sin(p);
            value[1] += a * w * Math.cos(p);
            value[2] -= a * w * w * Math.sin(p);
        }
    }

    /** The least-jerk step itself at a share u of its time: 0 before, 1 after. */
    static double step(double u) {
        double v = Math.max(0, Math.min(1, u));
        return v * v * v * (10 + v * (6 * v - 15));
    }

    /** Value, rate and acceleration of the least-jerk step 10u³ − 15u⁴ + 6u⁵ (Flash and Hogan 1985). */
    private static void quintic(double t, double seconds, double[] out) {
        if (t >= seconds) {
            out[0] = 1;
            out[1] = 0;
            out[2] = 0;
            return;
        }
        double u = t / seconds;
        double v = 1 - u;
        out[0] = u * u * u * (10 + u * (6 * u - 15));
        out[1] = 30 * u * u * v * v / seconds;
        out[2] = 60 * u * v * (1 - 2 * u) / (seconds * seconds);
    }
}
