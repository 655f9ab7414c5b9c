package bendline.simulate;

import bendline.simulate.Motion.Launch;
import bendline.simulate.Motion.Push;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Runs the casts of a scenario: drives the hands by their scripts, lets the line go at its moment, lets the rig land, and
 * winds it in before the next cast.
 */
final class CastRun {

    /** Links of the chain; 28 keep the bend within about 0.1 % of the continuous rod. */
    static final int LINKS = 28;

    private static final double DT = 2e-4;
    private static final double LEAD_IN = 1.5;
    private static final double WATER_Y = -0.35;
    private static final double WATER_X = 1.4;
    private static final double GROUND_Y = 0.04;
    private static final double WIND_IN = 2.9;
    private static final double WIND_BEFORE = 4.6;

    private final RodChain chain;
    private final RigSpec rig;
    private final RigLine line;
    private final ChainStepper stepper;
    private final HandPath hands;
    private final List<CastScript> scripts;
    private final HandMoves moves;
    private final List<Launch> launches = new ArrayList<>();
    private final List<Push> pushes = new ArrayList<>();
    private long done;
    private int cast;
    private double pushStart = Double.NaN;
    private double releaseAt = Double.NaN;
    private double windStart = Double.NaN;
    private double windFrom;

    /** At rest, a little before the clip starts. */
    CastRun(RodSpec rod, RigSpec rig, List<CastScript> scripts, double stature, long seed) {
        this.chain = new RodChain(rod, LINKS);
        this.rig = rig;
        this.line = new RigLine(rig);
        this.stepper = new ChainStepper(chain, line, rig, RodChain.GRAVITY, DT);
        stepper.water(WATER_Y, WATER_X);
        this.scripts = scripts;
        this.moves = new HandMoves(stature);
        double ready = scripts.isEmpty() ? 58 : scripts.get(0).readyAngleDeg();
        this.hands = moves.ready(ready, seed);
        if (!scripts.isEmpty()) {
            moves.cast(hands, scripts.get(0));
        }
        stepper.rest(hands.at(-LEAD_IN));
    }

    /** The other run as it stands, to go on by other scripts. */
    private CastRun(CastRun other, List<CastScript> scripts) {
        this.chain = other.chain;
        this.rig = other.rig;
        this.line = other.line.copy();
        this.stepper = new ChainStepper(chain, line, rig, RodChain.GRAVITY, DT);
        stepper.water(WATER_Y, WATER_X);
        this.stepper.state().set(other.stepper.state());
        this.scripts = scripts;
        this.moves = other.moves.copy();
        this.hands = other.hands.copy();
        this.launches.addAll(other.launches);
        this.pushes.addAll(other.pushes);
        this.done = other.done;
        this.cast = other.cast;
        this.pushStart = other.pushStart;
        this.releaseAt = other.releaseAt;
        this.windStart = other.windStart;
        this.windFrom = other.windFrom;
    }

    /** A copy that goes on by other scripts; what has been done by now must be the same in both. */
    CastRun fork(List<CastScript> others) {
        return new CastRun(this, others);
    }

    /**
     * Computes the motion.
     *
     * @param rod the blank
     * @param rig what hangs on it
     * @param scripts the casts in order of time
     * @param stature height of the angler, metres
     * @param seconds how long, real seconds from the start of the clip
     * @param seed of the standing sway
     */
    static Motion compute(
            RodSpec rod, RigSpec rig, List<CastScript> scripts, double stature, double seconds, long seed) {
        CastRun run = new CastRun(rod, rig, scripts, stature, seed);
        Motion motion = new Motion(run.chain.links, -LEAD_IN, DT);
        run.record(seconds, motion);
        return motion;
    }

    private void record(double seconds, Motion motion) {
        HandPose start = hands.at(-LEAD_IN);
        motion.add(start, stepper.state(), chain.linkM, 0, line.state());
        double first = stepper.energy(start).balance();
        double worst = 0;
        long steps = Math.round((seconds + LEAD_IN) / DT);
        while (done < steps) {
            boolean touched = step();
            HandPose hand = hands.at(now());
            double balance = stepper.energy(hand).balance();
            // A line let go takes the energy of its stretch with it, and a rig taken out of the water is moved from
            // outside: there the books start anew.
            first = touched ? balance : first;
            worst = Math.max(worst, Math.abs(balance - first));
            motion.add(hand, stepper.state(), chain.linkM, stepper.tension(), line.state());
        }
        launches.forEach(motion::launched);
        pushes.forEach(motion::pushed);
        motion.balanced(stepper.energy(hands.at(now())).work(), worst);
    }

    /** Goes on until a time in real seconds or until the line of a cast is let go; the launch or null. */
    @Nullable
    Launch runTo(double seconds, int castNumber) {
        long steps = Math.round((seconds + LEAD_IN) / DT);
        while (done < steps && launches.size() <= castNumber) {
            step();
        }
        return launches.size() > castNumber ? launches.get(castNumber) : null;
    }

    /** Butt angle now, radians. */
    double buttAngle() {
        return hands.at(now()).angle();
    }

    private double now() {
        return -LEAD_IN + done * DT;
    }

    private boolean step() {
        stepper.step(hands.at(now() + 0.5 * DT));
        done++;
        return act(now());
    }

    /** What the fingers and the reel do; true where the rig was moved from outside. */
    private boolean act(double t) {
        stepper.land(GROUND_Y);
        if (cast < scripts.size() && line.state() == RigLine.State.HELD) {
            CastScript script = scripts.get(cast);
            if (Double.isNaN(pushStart) && mayPush(script, t)) {
                pushStart = Math.max(t, script.pushFrom());
                moves.push(hands, script, pushStart);
                pushes.add(new Push(cast, pushStart));
            } else if (!Double.isNaN(pushStart) && mayRelease(script, t)) {
                release(t);
                return true;
            }
        }
        if (flying() && stepper.state().rigY < WATER_Y) {
            line.become(RigLine.State.LYING);
            return true;
        }
        if (line.state() == RigLine.State.RUNNING && rig.clipM() > 0 && out(t) >= rig.clipM()) {
            line.stop(rig.clipM());
            return true;
        }
        if (cast > 0 && cast < scripts.size() && line.state() != RigLine.State.HELD) {
            if (t > scripts.get(cast).startSeconds() - WIND_BEFORE) {
                takeUp(t);
                return true;
            }
        }
        wind(t);
        return false;
    }

    private boolean flying() {
        return line.state() == RigLine.State.RUNNING || line.state() == RigLine.State.STOPPED;
    }

    /** Tip to rig, metres. */
    private double out(double t) {
        double[] tip = stepper.tip(hands.at(t));
        return Math.hypot(stepper.state().rigX - tip[0], stepper.state().rigY - tip[1]);
    }

    /** Asked a little before the push so that its moves can still be added in time. */
    private boolean mayPush(CastScript script, double t) {
        if (script.putDown() || t < script.pushFrom() - DT) {
            return false;
        }
        if (t >= script.pushFrom() + script.feelSeconds() - DT) {
            return true;
        }
        double weight = rig.massKg() * RodChain.GRAVITY;
        double behind = stepper.tip(hands.at(t))[0] - stepper.state().rigX;
        return stepper.tension() > 1.3 * weight && behind > 0.25 * rig.dropM();
    }

    /** From the middle of the turn on the moment is known; the stroke is run ahead once to find it. */
    private boolean mayRelease(CastScript script, double t) {
        double turnStart = pushStart + script.turnDelaySeconds();
        if (t < turnStart + 0.45 * script.turnSeconds()) {
            return false;
        }
        if (Double.isNaN(releaseAt)) {
            double best = ReleaseMoment.find(
                    new ChainStepper(chain, line, rig, RodChain.GRAVITY, DT),
                    stepper.state(),
                    hands,
                    new ReleaseMoment.Window(
                            t, turnStart + script.turnSeconds() + 0.15, turnStart + 0.75 * script.turnSeconds()),
                    Math.toRadians(script.releaseDirectionDeg()));
            releaseAt = best + script.releaseLateSeconds();
        }
        return t >= releaseAt - 0.5 * DT;
    }

    private void release(double t) {
        ChainState s = stepper.state();
        line.become(RigLine.State.RUNNING);
        launches.add(new Launch(cast, t, Math.hypot(s.rigVx, s.rigVy), Math.atan2(s.rigVy, s.rigVx)));
        moves.released(hands, scripts.get(cast), t);
        cast++;
        pushStart = Double.NaN;
        releaseAt = Double.NaN;
        if (cast < scripts.size()) {
            moves.cast(hands, scripts.get(cast));
        }
    }

    /** The far part of the retrieve is left out: the rig comes out of the water under the tip. */
    private void takeUp(double t) {
        double[] tip = stepper.tip(hands.at(t));
        ChainState s = stepper.state();
        s.rigX = tip[0] + 0.6;
        s.rigY = WATER_Y - 0.1;
        s.rigVx = 0;
        s.rigVy = 0;
        windFrom = Math.hypot(s.rigX - tip[0], s.rigY - tip[1]);
        windStart = t;
        line.wind(windFrom, 0);
        line.become(RigLine.State.HELD);
    }

    private void wind(double t) {
        if (Double.isNaN(windStart)) {
            return;
        }
        double u = Math.min(1, (t - windStart) / WIND_IN);
        double way = rig.dropM() - windFrom;
        line.wind(windFrom + way * u * u * (3 - 2 * u), -way * 6 * u * (1 - u) / WIND_IN);
        if (u >= 1) {
            windStart = Double.NaN;
        }
    }
}
