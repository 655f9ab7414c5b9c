package bendline.rod;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How fast a blank swings by itself: small vibrations of a tapered beam held at its root (Euler and Bernoulli), with a mass on
 * its tip.
 *
 * <p>For a trial frequency the deflection w, slope φ, moment M and shear Q are integrated from the tip, once for w = 1 and once
 * for φ = 1; both can't be held still at the root unless the determinant of what arrives there is nought.
 */
public final class NaturalFrequency {

    private static final int STEPS = 1000;

    /** Steps of βL in which signs are looked for: the roots of a uniform beam lie π apart, those of a cone 1.6. */
    private static final double SCAN = 0.05;

    private static final double LARGEST = 60;

    private final Blank blank;
    private final double tipMassKg;
    private final double[] stiffness = new double[2 * STEPS + 1];
    private final double[] mass = new double[2 * STEPS + 1];
    private final double unit;

    /**
     * @param blank with a mass
     * @param tipMassKg on the tip, 0 or more
     * @throws IllegalArgumentException for a blank without mass that carries none
     */
    public NaturalFrequency(Blank blank, double tipMassKg) {
        Ranges.check("mass on the tip", tipMassKg, 0, 100, "kg");
        if (!(blank.massKgPerM() > 0)) {
            throw new IllegalArgumentException("a blank without mass has no frequency of its own");
        }
        this.blank = blank;
        this.tipMassKg = tipMassKg;
        for (int i = 0; i <= 2 * STEPS; i++) {
            double s = 0.5 * i * blank.lengthM() / STEPS;
            stiffness[i] = blank.stiffnessAt(s);
            mass[i] = blank.massAt(s);
        }
        double l2 = blank.lengthM() * blank.lengthM();
        this.unit = Math.sqrt(blank.stiffnessNm2() / blank.massKgPerM()) / l2;
    }

    /** Frequency of a mode, 1 for the lowest, in Hz. */
    public double hz(int mode) {
        double beta = betaL(mode);
        return beta * beta * unit / (2 * Math.PI);
    }

    /**
     * The number βL of a mode: (βL)² is the angular frequency over √(EI/(m·L⁴)), both of the root.
     *
     * @param mode from 1
     */
    public double betaL(int mode) {
        UnivariateFunction f = this::determinant;
        int found = 0;
        double before = f.value(SCAN);
        for (double b = SCAN; b < LARGEST; b += SCAN) {
            double after = f.value(b + SCAN);
            if (before * after <= 0 && ++found == mode) {
                return new BrentSolver(1e-13, 1e-13, 0).solve(200, f, b, b + SCAN);
            }
            before = after;
        }
        throw new IllegalArgumentException("mode " + mode + " lies beyond what is looked for");
    }

    /** Scaled so that it stays in range: only its sign and its zeros count. */
    private double determinant(double beta) {
        double omega = beta * beta * unit;
        double w2 = omega * omega;
        double[] first = {1, 0, 0, w2 * tipMassKg};
        double[] second = {0, 1, 0, 0};
        double[][] k = new double[4][4];
        double[] t = new double[4];
        for (int i = STEPS; i > 0; i--) {
            step(first, i, w2, k, t);
            step(second, i, w2, k, t);
        }
        double d = first[0] * second[1] - first[1] * second[0];
        double scale = Math.hypot(first[0], first[1]) * Math.hypot(second[0], second[1]);
        return d / scale;
    }

    /** One step towards the root: w′ = φ, φ′ = M/EI, M′ = −Q, Q′ = −ω²·m·w, Q being the force of all beyond. */
    private void step(double[] v, int i, double w2, double[][] k, double[] t) {
        double h = blank.lengthM() / STEPS;
        slope(v, 2 * i, w2, k[0]);
        along(v, k[0], 0.5 * h, t);
        slope(t, 2 * i - 1, w2, k[1]);
        along(v, k[1], 0.5 * h, t);
        slope(t, 2 * i - 1, w2, k[2]);
        along(v, k[2], h, t);
        slope(t, 2 * i - 2, w2, k[3]);
        for (int c = 0; c < 4; c++) {
            v[c] -= h / 6 * (k[0][c] + 2 * k[1][c] + 2 * k[2][c] + k[3][c]);
        }
    }

    private void slope(double[] v, int half, double w2, double[] out) {
        out[0] = v[1];
        out[1] = v[2] / stiffness[half];
        out[2] = -v[3];
        out[3] = -w2 * mass[half] * v[0];
    }

    private static void along(double[] v, double[] k, double step, double[] out) {
        for (int c = 0; c < 4; c++) {
            out[c] = v[c] - step * k[c];
        }
    }
}
