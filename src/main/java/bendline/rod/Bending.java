package bendline.rod;

import bendline.geometry.Point;

/**
 * The shape of a blank under a load: the elastica with varying stiffness. With arc length s from the root, direction θ, moment
 * M and R the sum of all forces beyond s,
 *
 * <pre>EI(s)·θ′ = M,   M′ = −(cos θ·R_y − sin θ·R_x),   θ(0) = butt angle,   M(L) = couple on the tip.</pre>
 *
 * As loads keep their direction R is known beforehand, so the two are integrated from the tip to the root (classical
 * Runge–Kutta) and the tip's direction is found by Newton's rule, its slope from the equations' own variation. The load grows
 * in stages, so that the solution is the one that a rod bent from straight comes to.
 */
public final class Bending {

    /** Steps along the blank; leaves under 1e-6 of the length on blanks whose tip has a hundredth of the root's stiffness. */
    public static final int STEPS = 120;

    private static final int ROUNDS = 40;
    private static final double CLOSE = 1e-11;
    private static final double LARGEST_TURN = 0.5;
    private static final double SMALLEST_STAGE = 1e-4;

    /** A load that needs more stages than this bends no rod that holds together. */
    private static final int MOST_STAGES = 80;

    private final Blank blank;
    private final int n;
    private final double h;
    private final double[] flexibility;
    private final double[] rx;
    private final double[] ry;
    private final double[] x;
    private final double[] y;
    private final double[] angle;
    private final double[] moment;
    private double tipMoment;

    /** Bends one blank, again and again. Not for several threads at once. */
    public Bending(Blank blank) {
        this(blank, STEPS);
    }

    /**
     * The same with other steps.
     *
     * @param steps even, 10 to 5000
     */
    public Bending(Blank blank, int steps) {
        if (steps < 10 || steps > 5000 || steps % 2 != 0) {
            throw new IllegalArgumentException("steps must be even, 10 to 5000, got " + steps);
        }
        this.blank = blank;
        this.n = steps;
        this.h = blank.lengthM() / n;
        this.flexibility = new double[2 * n + 1];
        for (int i = 0; i <= 2 * n; i++) {
            flexibility[i] = 1 / blank.stiffnessAt(0.5 * i * h);
        }
        this.rx = new double[2 * n + 1];
        this.ry = new double[2 * n + 1];
        this.x = new double[n + 1];
        this.y = new double[n + 1];
        this.angle = new double[n + 1];
        this.moment = new double[n + 1];
    }

    /**
     * The shape, root at the origin.
     *
     * @param buttAngle direction in which the root is held, radians
     * @throws BendException where no shape was found: a load far beyond what any rod stands
     */
    public BlankShape under(double buttAngle, Load load) {
        resultants(load);
        double tip = buttAngle;
        double done = 0;
        double stage = 1;
        for (int tries = 0; done < 1; tries++) {
            double next = Math.min(1, done + stage);
            double found = newton(tip, buttAngle, next);
            if (Math.abs(found - tip) <= LARGEST_TURN) {
                tip = found;
                done = next;
                stage *= 1.5;
            } else {
                stage = 0.5 * (next - done);
                if (stage < SMALLEST_STAGE || tries > MOST_STAGES) {
                    throw new BendException("no shape was found for a pull of " + load.tip() + " N on this blank");
                }
            }
        }
        return shape();
    }

    /** The same, starting near a shape that is known; much quicker where the load differs little. */
    public BlankShape under(double buttAngle, Load load, BlankShape near) {
        resultants(load);
        double start = near.angle()[near.steps()] + buttAngle - near.angle()[0];
        double found = newton(start, buttAngle, 1);
        return Math.abs(found - start) <= LARGEST_TURN ? shape() : under(buttAngle, load);
    }

    private BlankShape shape() {
        double x0 = x[0];
        double y0 = y[0];
        double[] sx = new double[n + 1];
        double[] sy = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            sx[i] = x[i] - x0;
            sy[i] = y[i] - y0;
        }
        return new BlankShape(blank, sx, sy, angle.clone(), moment.clone());
    }

    /** Sum of the forces beyond each half step; the load along the blank is straight within one. */
    private void resultants(Load load) {
        tipMoment = load.tipMomentNm();
        rx[2 * n] = load.tip().x();
        ry[2 * n] = load.tip().y();
        Point outer = load.bodyAt(1);
        for (int i = 2 * n - 1; i >= 0; i--) {
            Point inner = load.bodyAt(0.5 * i / n);
            rx[i] = rx[i + 1] + 0.25 * h * (inner.x() + outer.x());
            ry[i] = ry[i + 1] + 0.25 * h * (inner.y() + outer.y());
            outer = inner;
        }
    }

    /** Direction of the tip for which the root points as it is held; NaN where the search does not settle. */
    private double newton(double start, double butt, double share) {
        double tip = start;
        for (int round = 0; round < ROUNDS; round++) {
            double slope = integrate(tip, share);
            double gap = angle[0] - butt;
            if (Math.abs(gap) < CLOSE) {
                return tip;
            }
            double step = gap / slope;
            if (!Double.isFinite(step) || Math.abs(step) > 20) {
                return Double.NaN;
            }
            tip -= step;
        }
        return Math.abs(angle[0] - butt) < 1e-8 ? tip : Double.NaN;
    }

    /** From the tip to the root; returns how the direction at the root goes with that at the tip. */
    private double integrate(double tipAngle, double share) {
        double[] v = {tipAngle, share * tipMoment, 1, 0, 0, 0};
        double[][] k = new double[4][6];
        double[] w = new double[6];
        store(n, v);
        for (int i = n; i > 0; i--) {
            slope(v, 2 * i, share, k[0]);
            along(v, k[0], 0.5 * h, w);
            slope(w, 2 * i - 1, share, k[1]);
            along(v, k[1], 0.5 * h, w);
            slope(w, 2 * i - 1, share, k[2]);
            along(v, k[2], h, w);
            slope(w, 2 * i - 2, share, k[3]);
            for (int c = 0; c < 6; c++) {
                v[c] -= h / 6 * (k[0][c] + 2 * k[1][c] + 2 * k[2][c] + k[3][c]);
            }
            store(i - 1, v);
        }
        return v[2];
    }

    private static void along(double[] v, double[] k, double step, double[] out) {
        for (int c = 0; c < 6; c++) {
            out[c] = v[c] - step * k[c];
        }
    }

    /** θ, M, their change with the tip's direction, and the place. */
    private void slope(double[] v, int half, double share, double[] out) {
        double cos = Math.cos(v[0]);
        double sin = Math.sin(v[0]);
        double fx = share * rx[half];
        double fy = share * ry[half];
        out[0] = v[1] * flexibility[half];
        out[1] = -(cos * fy - sin * fx);
        out[2] = v[3] * flexibility[half];
        out[3] = (sin * fy + cos * fx) * v[2];
        out[4] = cos;
        out[5] = sin;
    }

    private void store(int i, double[] v) {
        angle[i] = v[0];
        moment[i] = v[1];
        x[i] = v[4];
        y[i] = v[5];
    }
}
