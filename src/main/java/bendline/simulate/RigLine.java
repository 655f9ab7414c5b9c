package bendline.simulate;

/**
 * The light line between tip and rig. It can only pull: stretched beyond its length it pulls like a damped spring, slack
 * it does nothing. Once let go it runs off the reel and only drags a little.
 */
final class RigLine {

    /** What the line does. */
    enum State {
        /** Held at its length. */
        HELD,
        /** Let go: runs after the flying rig with a constant small pull. */
        RUNNING,
        /** Run out to the clip: a long line that is held there. */
        STOPPED,
        /** Lies in the water, pulls at nothing. */
        LYING
    }

    /** Length of line before the clip over which a finger slows it, metres. */
    static final double FEATHERED_M = 20;

    private final double stiffnessN;
    private final double lossSeconds;
    private final double runningPullN;
    private final double featherFromM;
    private final double featherN;
    private double lengthM;
    private double windingMps;
    private State state = State.HELD;

    RigLine(RigSpec rig) {
        this.stiffnessN = rig.lineStiffnessN();
        this.lossSeconds = rig.lineLossSeconds();
        this.runningPullN = rig.linePullN();
        this.featherFromM = rig.clipM() > 0 ? rig.clipM() - FEATHERED_M : Double.POSITIVE_INFINITY;
        this.featherN = rig.featherN();
        this.lengthM = rig.dropM();
    }

    RigLine copy() {
        return new RigLine(this);
    }

    private RigLine(RigLine other) {
        this.stiffnessN = other.stiffnessN;
        this.lossSeconds = other.lossSeconds;
        this.runningPullN = other.runningPullN;
        this.featherFromM = other.featherFromM;
        this.featherN = other.featherN;
        this.lengthM = other.lengthM;
        this.windingMps = other.windingMps;
        this.state = other.state;
    }

    State state() {
        return state;
    }

    void become(State next) {
        state = next;
    }

    /** The clip holds the line at its length from now on, metres. */
    void stop(double lengthM) {
        wind(lengthM, 0);
        state = State.STOPPED;
    }

    /** Sets the unstretched length in metres and how fast the reel takes it in, m/s. */
    void wind(double lengthM, double windingMps) {
        this.lengthM = lengthM;
        this.windingMps = windingMps;
    }

    double lengthM() {
        return lengthM;
    }

    /** Pull in newtons at a distance tip to rig in metres that grows at a rate in m/s. */
    double tension(double distance, double rate) {
        if (state == State.RUNNING) {
            return distance > featherFromM ? runningPullN + featherN : runningPullN;
        }
        double stretch = distance - lengthM;
        if (state == State.LYING || stretch <= 0) {
            return 0;
        }
        return Math.max(0, stiffnessN / lengthM * (stretch + lossSeconds * (rate + windingMps)));
    }

    /** Elastic energy in joules at a distance tip to rig. */
    double energy(double distance) {
        double stretch = distance - lengthM;
        return (state != State.HELD && state != State.STOPPED) || stretch <= 0
                ? 0
                : 0.5 * stiffnessN / lengthM * stretch * stretch;
    }

    /**
     * Power in watts that the line loses at this distance, rate and pull; the part of the pull beyond the spring's is the
     * damper's, and a running line loses all it pulls.
     */
    double lossPower(double distance, double rate, double tension) {
        if (state == State.RUNNING) {
            return tension * rate;
        }
        double stretch = distance - lengthM;
        if (state == State.LYING || stretch <= 0) {
            return 0;
        }
        return (tension - stiffnessN / lengthM * stretch) * (rate + windingMps);
    }

    /** Power in watts that the reel puts in by winding. */
    double windingPower(double tension) {
        return state == State.HELD ? tension * windingMps : 0;
    }
}
