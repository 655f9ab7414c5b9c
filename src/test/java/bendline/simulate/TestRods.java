package bendline.simulate;

/** Rods with simple laws, for which published values exist. */
final class TestRods {

    static final double FREE_M = 3.0;

    private TestRods() {}

    /** Same section all along: free length 3 m, EI in N·m², mass in kg/m, no loss. */
    static RodSpec uniform(double ei, double massPerMetre) {
        return new RodSpec(FREE_M + 0.5, 0.5, ei, ei, 4, massPerMetre, massPerMetre, 5, 5, 0);
    }

    /** A solid cone cut off at a tip diameter of so many parts of the root's: A goes as d², I as d⁴. */
    static RodSpec cone(double tipShare, double eiRoot, double massRoot) {
        double d2 = tipShare * tipShare;
        return new RodSpec(
                FREE_M + 0.5, 0.5, eiRoot, eiRoot * d2 * d2, 4, massRoot, massRoot * d2, 20, 20 * tipShare, 0);
    }

    /** Tip of a chain with the hand at the origin: x, y in metres. */
    static double[] tip(RodChain chain, double[] theta) {
        double x = 0;
        double y = 0;
        for (double t : theta) {
            x += chain.linkM * Math.cos(t);
            y += chain.linkM * Math.sin(t);
        }
        return new double[] {x, y};
    }

    /** A hand that holds still at the origin with the rod at an angle in radians. */
    static HandPose still(double angle) {
        return new HandPose(0, 0, 0, 0, 0, 0, angle, 0);
    }
}
