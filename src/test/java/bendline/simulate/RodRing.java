package bendline.simulate;

/** How a simulated rod without rig and line rings when its tip is bent a little and let go, the hand a vice. */
public final class RodRing {

    private static final double DT = 2e-4;
    private static final double SECONDS = 4;
    private static final int SWINGS = 5;

    private RodRing() {}

    /**
     * @param hz swings a second
     * @param damping over the critical one, from the logarithmic decrement of five swings
     */
    public record Ring(double hz, double damping) {}

    /** Lets it ring, without weight. */
    public static Ring of(RodSpec rod) {
        RodChain chain = new RodChain(rod, CastRun.LINKS);
        RigSpec rig = RigSpec.feeder(80, 1);
        RigLine line = new RigLine(rig);
        line.become(RigLine.State.LYING);
        ChainStepper stepper = new ChainStepper(chain, line, rig, 0, DT);
        double soft = rod.eiAt(0) / (rod.freeLengthM() * rod.freeLengthM());
        double[] bent = chain.atRest(0, 0, 0, -0.01 * soft);
        System.arraycopy(bent, 0, stepper.state().theta, 0, bent.length);
        HandPose hand = TestRods.still(0);
        double[] peaks = new double[SWINGS + 1];
        double[] times = new double[SWINGS + 1];
        int found = 0;
        double older = 0;
        double old = stepper.tip(hand)[1];
        for (int i = 1; i < SECONDS / DT && found <= SWINGS; i++) {
            stepper.step(hand);
            double now = stepper.tip(hand)[1];
            if (i > 1 && old > older && old >= now) {
                peaks[found] = old;
                times[found++] = (i - 1) * DT;
            }
            older = old;
            old = now;
        }
        double decrement = Math.log(peaks[1] / peaks[SWINGS]) / (SWINGS - 1);
        return new Ring((SWINGS - 1) / (times[SWINGS] - times[1]), decrement / Math.hypot(2 * Math.PI, decrement));
    }
}
