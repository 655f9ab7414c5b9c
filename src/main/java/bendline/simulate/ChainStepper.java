package bendline.simulate;

/**
 * Moves rod, line and rig on by small steps with the implicit midpoint rule. Bending stiffness and damping, which would
 * force a tiny step, enter the linear system of the step; inertia, weight, air and line are found by a few rounds of
 * fixed-point iteration. Second order, free of numerical damping; the same input gives the same result.
 */
final class ChainStepper {

    private static final int ROUNDS = 3;

    private final RodChain chain;
    private final RigLine line;
    private final double rigMass;
    private final double rigDrag;
    private final double gravity;
    private final double dt;
    private final int n;
    private final ChainState now;
    private final ChainState mid;
    private final CholeskySolver system;
    private final double[] delta;
    private final double[] right;
    private final double[] momentumX;
    private final double[] momentumY;
    private final double[] cos;
    private final double[] sin;
    private final double[] forceX;
    private final double[] forceY;
    private double waterLevel = Double.NEGATIVE_INFINITY;
    private double waterFrom;
    private double rigDvx;
    private double rigDvy;
    private double tension;
    private double lineRate;
    private double lineDistance;
    private double work;
    private double lost;

    ChainStepper(RodChain chain, RigLine line, RigSpec rig, double gravity, double dt) {
        this.chain = chain;
        this.line = line;
        this.rigMass = rig.massKg();
        this.rigDrag = rig.dragPerMetre();
        this.gravity = gravity;
        this.dt = dt;
        this.n = chain.links;
        this.now = new ChainState(n);
        this.mid = new ChainState(n);
        this.system = new CholeskySolver(n);
        this.delta = new double[n];
        this.right = new double[n];
        this.momentumX = new double[n];
        this.momentumY = new double[n];
        this.cos = new double[n];
        this.sin = new double[n];
        this.forceX = new double[n];
        this.forceY = new double[n];
    }

    /** The state now; the caller may change it between steps. */
    ChainState state() {
        return now;
    }

    /** Puts water below a level, from a place on, metres; without this there is none. */
    void water(double level, double from) {
        waterLevel = level;
        waterFrom = from;
    }

    double stepSeconds() {
        return dt;
    }

    /** Line tension in the middle of the last step, newtons. */
    double tension() {
        return tension;
    }

    /** Puts rod and rig to rest: the rod bent by its own weight and the hanging rig. */
    void rest(HandPose hand) {
        double[] theta = chain.atRest(hand.angle(), gravity, 0, -rigMass * gravity);
        System.arraycopy(theta, 0, now.theta, 0, n);
        java.util.Arrays.fill(now.omega, 0);
        double[] tip = tip(hand);
        double stretch = 0;
        while (line.tension(line.lengthM() + stretch, 0) < rigMass * gravity && stretch < 0.5) {
            stretch += 1e-6;
        }
        now.rigX = tip[0];
        now.rigY = tip[1] - line.lengthM() - stretch;
        now.rigVx = 0;
        now.rigVy = 0;
    }

    /** Tip place and speed: x, y, vx, vy in metres and m/s for the hand as it is now. */
    double[] tip(HandPose hand) {
        double[] tip = {hand.x(), hand.y(), hand.vx(), hand.vy()};
        for (int i = 0; i < n; i++) {
            double c = Math.cos(now.theta[i]) * chain.linkM;
            double s = Math.sin(now.theta[i]) * chain.linkM;
            tip[0] += c;
            tip[1] += s;
            tip[2] -= s * now.omega[i];
            tip[3] += c * now.omega[i];
        }
        return tip;
    }

    /** One step; {@code hand} is the pose in the middle of it. */
    void step(HandPose hand) {
        java.util.Arrays.fill(delta, 0);
        rigDvx = 0;
        rigDvy = 0;
        toMiddle();
        forces(hand);
        assemble();
        system.factor();
        rightSide(hand);
        system.solve(right);
        for (int round = 1; ; round++) {
            for (int i = 0; i < n; i++) {
                delta[i] += right[i];
            }
            toMiddle();
            forces(hand);
            if (round == ROUNDS) {
                break;
            }
            // The inertia of the links turns so little within a step that the first factor still serves; what it leaves
            // over is put right in the next round.
            rightSide(hand);
            system.solve(right);
        }
        book(hand);
        finish();
    }

    private void toMiddle() {
        for (int i = 0; i < n; i++) {
            mid.omega[i] = now.omega[i] + 0.5 * delta[i];
            mid.theta[i] = now.theta[i] + 0.5 * dt * mid.omega[i];
            cos[i] = Math.cos(mid.theta[i]);
            sin[i] = Math.sin(mid.theta[i]);
        }
        mid.rigVx = now.rigVx + 0.5 * rigDvx;
        mid.rigVy = now.rigVy + 0.5 * rigDvy;
        mid.rigX = now.rigX + 0.5 * dt * mid.rigVx;
        mid.rigY = now.rigY + 0.5 * dt * mid.rigVy;
    }

    /** Force on each node with the inertia of the turning links and the moving hand, without that of Δω. */
    private void forces(HandPose hand) {
        double px = hand.x();
        double py = hand.y();
        double vx = hand.vx();
        double vy = hand.vy();
        double ax = hand.ax();
        double ay = hand.ay() + gravity;
        for (int i = 0; i < n; i++) {
            double w = mid.omega[i];
            double lc = chain.linkM * cos[i];
            double ls = chain.linkM * sin[i];
            px += lc;
            py += ls;
            vx -= ls * w;
            vy += lc * w;
            ax -= lc * w * w;
            ay -= ls * w * w;
            double across = -sin[i] * vx + cos[i] * vy;
            double drag = -chain.airDrag[i] * Math.abs(across) * across;
            forceX[i] = -chain.mass[i] * ax - drag * sin[i];
            forceY[i] = -chain.mass[i] * ay + drag * cos[i];
        }
        pull(px, py, vx, vy);
    }

    private void pull(double px, double py, double vx, double vy) {
        double dx = mid.rigX - px;
        double dy = mid.rigY - py;
        lineDistance = Math.hypot(dx, dy);
        double ux = lineDistance > 0 ? dx / lineDistance : 0;
        double uy = lineDistance > 0 ? dy / lineDistance : 0;
        lineRate = (mid.rigVx - vx) * ux + (mid.rigVy - vy) * uy;
        tension = line.tension(lineDistance, lineRate);
        forceX[n - 1] += tension * ux;
        forceY[n - 1] += tension * uy;
        double drag = rigDrag() * Math.hypot(mid.rigVx, mid.rigVy);
        rigDvx = dt * (-tension * ux / rigMass - drag * mid.rigVx);
        rigDvy = dt * (-tension * uy / rigMass - drag * mid.rigVy - gravity);
    }

    /** Water is some eight hundred times as dense as air. */
    private double rigDrag() {
        return mid.rigY < waterLevel && mid.rigX > waterFrom ? 816 * rigDrag : rigDrag;
    }

    private void assemble() {
        double l2 = chain.linkM * chain.linkM;
        for (int i = 0; i < n; i++) {
            double[] row = system.a[i];
            double beyond = l2 * chain.massBeyond[i];
            for (int j = 0; j <= i; j++) {
                row[j] = beyond * (cos[i] * cos[j] + sin[i] * sin[j]);
            }
            double own = implicit(i);
            row[i] += own;
            if (i + 1 < n) {
                row[i] += implicit(i + 1);
            }
            if (i > 0) {
                row[i - 1] -= own;
            }
        }
    }

    private double implicit(int joint) {
        return 0.25 * dt * dt * chain.stiffness[joint] + 0.5 * dt * chain.damping[joint];
    }

    /** What is missing in the equations of the step for the Δω so far. */
    private void rightSide(HandPose hand) {
        // Node accelerations by Δω, node by node from the hand outwards.
        double ax = 0;
        double ay = 0;
        for (int i = 0; i < n; i++) {
            ax -= chain.linkM * sin[i] * delta[i];
            ay += chain.linkM * cos[i] * delta[i];
            momentumX[i] = dt * forceX[i] - chain.mass[i] * ax;
            momentumY[i] = dt * forceY[i] - chain.mass[i] * ay;
        }
        double sx = 0;
        double sy = 0;
        double outer = 0;
        for (int i = n - 1; i >= 0; i--) {
            sx += momentumX[i];
            sy += momentumY[i];
            double bend = mid.theta[i] - (i == 0 ? hand.angle() : mid.theta[i - 1]);
            double rate = mid.omega[i] - (i == 0 ? hand.rate() : mid.omega[i - 1]);
            double moment = dt * (chain.stiffness[i] * bend + chain.damping[i] * rate);
            right[i] = chain.linkM * (-sin[i] * sx + cos[i] * sy) - moment + outer;
            outer = moment;
        }
    }

    private void book(HandPose hand) {
        double bend = mid.theta[0] - hand.angle();
        double rate = mid.omega[0] - hand.rate();
        double moment = chain.stiffness[0] * bend + chain.damping[0] * rate;
        double fx = 0;
        double fy = 0;
        double ax = 0;
        double ay = 0;
        double vx = hand.vx();
        double vy = hand.vy();
        for (int i = 0; i < n; i++) {
            double alpha = delta[i] / dt;
            ax -= chain.linkM * sin[i] * alpha;
            ay += chain.linkM * cos[i] * alpha;
            fx += chain.mass[i] * ax - forceX[i];
            fy += chain.mass[i] * ay - forceY[i];
            vx -= chain.linkM * sin[i] * mid.omega[i];
            vy += chain.linkM * cos[i] * mid.omega[i];
            double across = Math.abs(-sin[i] * vx + cos[i] * vy);
            lost += dt * chain.airDrag[i] * across * across * across;
            double turn = i == 0 ? rate : mid.omega[i] - mid.omega[i - 1];
            lost += dt * chain.damping[i] * turn * turn;
        }
        work += dt * (fx * hand.vx() + fy * hand.vy() - moment * hand.rate() + line.windingPower(tension));
        double speed = Math.hypot(mid.rigVx, mid.rigVy);
        lost += dt * (rigMass * rigDrag() * speed * speed * speed + line.lossPower(lineDistance, lineRate, tension));
    }

    private void finish() {
        for (int i = 0; i < n; i++) {
            now.theta[i] += dt * mid.omega[i];
            now.omega[i] += delta[i];
        }
        now.rigX += dt * mid.rigVx;
        now.rigY += dt * mid.rigVy;
        now.rigVx += rigDvx;
        now.rigVy += rigDvy;
    }

    /** On the bank a rig that comes down to this height bounces a little and slides. */
    void land(double ground) {
        if (now.rigX > 1 || now.rigY > ground || now.rigVy > 0) {
            return;
        }
        double before = now.rigVx * now.rigVx + now.rigVy * now.rigVy;
        now.rigVy *= -0.25;
        now.rigVx *= 0.9;
        double after = now.rigVx * now.rigVx + now.rigVy * now.rigVy;
        lost += 0.5 * rigMass * (before - after);
    }

    /** The books at the end of the last step, for the hand as it is then. */
    EnergyBook energy(HandPose hand) {
        double[] p = {hand.x(), hand.y(), hand.vx(), hand.vy()};
        double kinetic = 0.5 * rigMass * (now.rigVx * now.rigVx + now.rigVy * now.rigVy);
        double height = rigMass * gravity * now.rigY;
        for (int i = 0; i < n; i++) {
            double c = Math.cos(now.theta[i]) * chain.linkM;
            double s = Math.sin(now.theta[i]) * chain.linkM;
            p[0] += c;
            p[1] += s;
            p[2] -= s * now.omega[i];
            p[3] += c * now.omega[i];
            kinetic += 0.5 * chain.mass[i] * (p[2] * p[2] + p[3] * p[3]);
            height += chain.mass[i] * gravity * p[1];
        }
        double elastic = chain.elasticEnergy(now.theta, hand.angle())
                + line.energy(Math.hypot(now.rigX - p[0], now.rigY - p[1]));
        return new EnergyBook(work, kinetic, elastic, height, lost);
    }
}
