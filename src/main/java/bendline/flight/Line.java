package bendline.flight;

/**
 * The line behind the rig.
 *
 * @param diameterM 0 for none
 * @param densityKgPerM3 of the line as it is cast, wet
 * @param modulusPa stiffness of the stretched line, tension over (strain times cross-section)
 * @param dragFactor what its skin friction is multiplied with; 1 as published
 */
public record Line(double diameterM, double densityKgPerM3, double modulusPa, double dragFactor) {

    /** No line at all: the rig alone. */
    public static final Line NONE = new Line(0, 1000, 2e9, 1);

    /** A cylinder across the stream between Reynolds numbers of 1e2 and 1e5; with the next, within a third of its curve down to 5. */
    private static final double ACROSS = 1.1;

    /** The part of that coefficient that goes as one over the Reynolds number. */
    private static final double ACROSS_SLOW = 25;

    /** Checks ranges. */
    public Line {
        if (diameterM != 0) {
            Amounts.check("line diameter", diameterM, 5e-5, 1.5e-3, "m");
        }
        Amounts.check("line density", densityKgPerM3, 800, 2000, "kg/m3");
        Amounts.check("line modulus", modulusPa, 1e8, 2e11, "Pa");
        Amounts.check("line drag factor", dragFactor, 0, 5, "");
    }

    /** Nylon: 1140 kg/m3 and some 2.5 GPa, handbook values from memory. */
    public static Line nylon(double diameterM) {
        return new Line(diameterM, 1140, 2.5e9, 1);
    }

    /** Braided polyethylene, which takes up its own weight of water between the threads: 1000 kg/m3, 30 GPa, from memory. */
    public static Line braid(double diameterM) {
        return new Line(diameterM, 1000, 3e10, 1);
    }

    /** The same stuff in another thickness. */
    public Line withDiameter(double newDiameterM) {
        return new Line(newDiameterM, densityKgPerM3, modulusPa, dragFactor);
    }

    /** The same line in thicker or thinner air, as it were. */
    public Line withDragFactor(double factor) {
        return new Line(diameterM, densityKgPerM3, modulusPa, factor);
    }

    boolean none() {
        return diameterM == 0;
    }

    /** Mass of a metre, kg/m. */
    public double massPerMetre() {
        return densityKgPerM3 * Math.PI / 4 * diameterM * diameterM;
    }

    /** Tension over strain, N. */
    double stretchForce() {
        return modulusPa * Math.PI / 4 * diameterM * diameterM;
    }

    /**
     * Skin friction along the line, N: White's formula for long thin cylinders in a turbulent stream along them (Viscous Fluid
     * Flow; from memory), {@code cf = 0.0015 + (0.30 + 0.015 (L/a)^0.4) Re_L^(-1/3)} on the wetted area.
     *
     * @param speedMps of the line along itself against the air, with its sign
     */
    double dragAlong(double lengthM, double speedMps, Air air) {
        double v = Math.abs(speedMps);
        double reynolds = Math.max(1, v * lengthM / air.kinematicViscosity());
        double slender = Math.pow(lengthM / (0.5 * diameterM), 0.4);
        double cf = 0.0015 + (0.30 + 0.015 * slender) * Math.pow(reynolds, -1.0 / 3);
        return 0.5 * air.densityKgPerM3() * dragFactor * cf * Math.PI * diameterM * lengthM * v * speedMps;
    }

    /** Drag of a metre across the line, N/m, at a speed across it in m/s. */
    double dragAcross(double speedMps, Air air) {
        double v = Math.abs(speedMps);
        return (quadratic(air) * v + linear(air)) * speedMps;
    }

    /** The speed across the line at which the drag of a metre is a force, m/s and N/m; the inverse of {@link #dragAcross}. */
    double speedAcross(double force, Air air) {
        double q = quadratic(air);
        double l = linear(air);
        return 2 * force / (l + Math.sqrt(l * l + 4 * q * force));
    }

    private double quadratic(Air air) {
        return 0.5 * air.densityKgPerM3() * ACROSS * diameterM;
    }

    private double linear(Air air) {
        return 0.5 * air.densityKgPerM3() * ACROSS_SLOW * air.kinematicViscosity();
    }
}
