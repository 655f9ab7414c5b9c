package bendline.simulate;

/**
 * When a practised finger lets go: the moment at which the rig's flight turns down through the aimed direction or, where it
 * never flies that steeply, at which it would fly furthest. Found by running the stroke ahead with the line still held.
 */
final class ReleaseMoment {

    /** Slower than this, m/s, the rig is not yet being cast. */
    private static final double SLOWEST = 20;

    /** Newtons. */
    private static final double DEAD_PULL = 1;

    private ReleaseMoment() {}

    /**
     * Where to look, seconds.
     *
     * @param start first time
     * @param end last time
     * @param turned when the rod is about to stop; once the pull dies after that the rig flies free, held or not
     */
    record Window(double start, double end, double turned) {}

    /**
     * Seconds of the best moment within a window.
     *
     * @param stepper a fresh stepper for the same rod, rig and line; it is moved on
     * @param from state at the start; not changed
     * @param hands the stroke
     * @param window where to look
     * @param direction the flight direction that carries furthest, radians
     */
    static double find(ChainStepper stepper, ChainState from, HandPath hands, Window window, double direction) {
        double dt = stepper.stepSeconds();
        stepper.state().set(from);
        double best = Double.NEGATIVE_INFINITY;
        double when = window.end;
        boolean above = false;
        double crossed = Double.NaN;
        for (int i = 0; window.start + i * dt < window.end; i++) {
            stepper.step(hands.at(window.start + (i + 0.5) * dt));
            ChainState s = stepper.state();
            double t = window.start + (i + 1) * dt;
            double reach = reach(s, direction);
            if (t > window.turned && stepper.tension() < DEAD_PULL && s.rigVx > 0) {
                break;
            }
            if (reach > best) {
                best = reach;
                when = t;
            }
            boolean steeper = Math.atan2(s.rigVy, s.rigVx) > direction;
            if (above && !steeper && s.rigVx > 0) {
                crossed = Math.hypot(s.rigVx, s.rigVy) > SLOWEST ? t : crossed;
            }
            above = steeper;
        }
        return Double.isNaN(crossed) ? when : crossed;
    }

    /** Grows like the range: square of the speed, falling off to both sides of the best direction. */
    private static double reach(ChainState s, double direction) {
        double off = Math.atan2(s.rigVy, s.rigVx) - direction;
        double share = Math.abs(off) < Math.PI / 4 ? Math.cos(2 * off) : 0;
        return (s.rigVx * s.rigVx + s.rigVy * s.rigVy) * share;
    }
}
