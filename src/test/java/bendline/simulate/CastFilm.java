package bendline.simulate;

import java.util.List;

/** The motion of a scenario, computed once and seen by as many phones as wanted: truth without pictures. */
public final class CastFilm {

    private final Scenario scenario;
    private final Motion motion;

    private CastFilm(Scenario scenario, Motion motion) {
        this.scenario = scenario;
        this.motion = motion;
    }

    /** Computes the motion of a scenario, its casts tuned so that they come off, as those of the deck are. */
    public static CastFilm of(Scenario scenario) {
        return asWritten(CastTuner.tunedAndTrimmed(scenario));
    }

    /** Computes the motion of a scenario as its script says, filmed until a little after its last cast. */
    public static CastFilm asWritten(Scenario whole) {
        double over = whole.casts().get(whole.casts().size() - 1).overSeconds() + 1;
        Scenario scenario = whole.lasting(Math.min(whole.seconds(), over));
        Motion motion = Simulator.motion(scenario);
        if (motion == null) {
            throw new IllegalArgumentException("scenario " + scenario.name() + " has nobody in it who moves a rod");
        }
        return new CastFilm(scenario, motion);
    }

    /** What a phone that stands still sees, frame by frame. */
    public Truth seenBy(CameraSpec camera) {
        Scenario filmed = new Scenario(
                scenario.name(),
                scenario.seed(),
                scenario.seconds(),
                scenario.leftToRight(),
                scenario.angler(),
                scenario.statureM(),
                scenario.tipColour(),
                scenario.rod(),
                scenario.rig(),
                scenario.casts(),
                camera,
                scenario.scene());
        return new TruthWriter(filmed, motion, new HandShake(camera, scenario.seed())).truth();
    }

    /** The scenario, its casts tuned. */
    public Scenario scenario() {
        return scenario;
    }

    /** How the line left the rig at each release: metres per second and degrees above level. */
    public List<double[]> launches() {
        return motion.launches().stream()
                .map(l -> new double[] {l.speed(), Math.toDegrees(l.angle())})
                .toList();
    }

    /**
     * How far the rig of a launch flies in still air until it is down on the water, metres, its line drawn over a tip ring that
     * the finish of the cast turns away from the line: the pull grows by exp(μ·angle) (a rope round a bollard, Euler and
     * Eytelwein).
     *
     * @param friction μ of line on ring
     */
    public double distance(int launch, double friction) {
        Motion.Launch l = motion.launches().get(launch);
        Motion.Moment m = motion.at(l.t());
        double[] from = {m.rigX(), m.rigY()};
        return RigThrow.distance(
                scenario.rig(),
                from,
                l.speed(),
                l.angle(),
                t -> scenario.rig().linePullN() * Math.exp(friction * bendAtTheRing(l.t() + t)));
    }

    /** Angle between the tip's direction and the way from the tip to the rig, radians. */
    private double bendAtTheRing(double t) {
        Motion.Moment m = motion.at(Math.min(t, motion.time(motion.size() - 1)));
        int n = m.nodeX().length;
        double tip = Math.atan2(m.nodeY()[n - 1] - m.nodeY()[n - 2], m.nodeX()[n - 1] - m.nodeX()[n - 2]);
        double way = Math.atan2(m.rigY() - m.tipY(), m.rigX() - m.tipX());
        return Math.abs(Math.atan2(Math.sin(way - tip), Math.cos(way - tip)));
    }
}
