package bendline.simulate;

/**
 * Turns a cast script into moves of the hands: lift and backswing, push with the turn following it, stop, hold or drop,
 * and lowering the rod to wait. Hand positions scale with the angler's stature.
 */
final class HandMoves {

    private static final double[] READY = {0.42, 1.28};
    private static final double[] REAR = {-0.10, 1.78};
    private static final double[] FRONT = {0.57, 1.92};
    private static final double WAIT_DEG = 38;
    private static final double WAIT_Y = 1.36;

    private final double scale;
    private double x;
    private double y;
    private double angleDeg;

    /** @param stature metres; the positions above are for 1.78 */
    HandMoves(double stature) {
        this.scale = stature / 1.78;
    }

    private HandMoves(HandMoves other) {
        this.scale = other.scale;
        this.x = other.x;
        this.y = other.y;
        this.angleDeg = other.angleDeg;
    }

    HandMoves copy() {
        return new HandMoves(this);
    }

    /** Hands that hold the rod ready at a butt angle in degrees. */
    HandPath ready(double readyDeg, long seed) {
        x = READY[0] * scale;
        y = READY[1] * scale;
        angleDeg = readyDeg;
        return new HandPath(x, y, Math.toRadians(readyDeg), 0.006, seed);
    }

    /** Adds the backswing, and for an angler who thinks better of it the way down. */
    void cast(HandPath path, CastScript s) {
        double start = s.startSeconds();
        if (Math.abs(angleDeg - s.readyAngleDeg()) > 0.1) {
            to(path, start - 5.2, 1.0, READY, s.readyAngleDeg());
        }
        double handSeconds = s.backswingSeconds() * 0.9;
        double rearY = REAR[1] * scale - (s.body() == null ? 0 : s.body().handsLowerM());
        path.add(new HandPath.Move(start, handSeconds, REAR[0] * scale - x, rearY - y, 0));
        x = REAR[0] * scale;
        y = rearY;
        turn(path, start, s.backswingSeconds(), s.layBackDeg());
        if (s.putDown()) {
            double back = start + s.backswingSeconds() + 0.9;
            to(path, back, 1.7, READY, 60);
            to(path, back + 1.6, 1.5, new double[] {0.5, 0.78}, 6);
        }
    }

    /** Adds the forward stroke, its push starting at a time in seconds. */
    void push(HandPath path, CastScript s, double start) {
        path.add(new HandPath.Move(start, s.pushSeconds(), FRONT[0] * scale - x, FRONT[1] * scale - y, 0));
        x = FRONT[0] * scale;
        y = FRONT[1] * scale;
        turn(path, start + s.turnDelaySeconds(), s.turnSeconds(), s.stopAngleDeg());
    }

    /** Adds what follows the release: the drop, and lowering the rod after the hold. */
    void released(HandPath path, CastScript s, double t) {
        double dropped = s.dropDeg();
        double sink = -0.42 * scale * dropped / 46;
        path.add(new HandPath.Move(
                t + s.dropDelaySeconds(), s.dropSeconds(), 0.06 * dropped / 46, sink, -Math.toRadians(dropped)));
        double held = s.stopAngleDeg() - dropped;
        double lower = t + s.dropDelaySeconds() + s.dropSeconds() + s.holdSeconds();
        double down = Math.toRadians(WAIT_DEG - held);
        path.add(new HandPath.Move(lower, 1.3, 0, WAIT_Y * scale - (FRONT[1] * scale + sink), down));
        x = FRONT[0] * scale + 0.06 * dropped / 46;
        y = WAIT_Y * scale;
        angleDeg = WAIT_DEG;
    }

    private void to(HandPath path, double start, double seconds, double[] place, double deg) {
        path.add(new HandPath.Move(
                start, seconds, place[0] * scale - x, place[1] * scale - y, Math.toRadians(deg - angleDeg)));
        x = place[0] * scale;
        y = place[1] * scale;
        angleDeg = deg;
    }

    private void turn(HandPath path, double start, double seconds, double deg) {
        path.add(new HandPath.Move(start, seconds, 0, 0, Math.toRadians(deg - angleDeg)));
        angleDeg = deg;
    }
}
