package bendline.simulate;

/** Energy that the simulated blank holds in its bend. */
final class BendEnergy {

    private BendEnergy() {}

    /** Joules, from the angles between the chain's links. */
    static double of(Motion.Moment m, RodSpec rod) {
        int links = m.nodeX().length - 1;
        double[] theta = new double[links];
        double before = m.angle();
        for (int i = 0; i < links; i++) {
            double a = Math.atan2(m.nodeY()[i + 1] - m.nodeY()[i], m.nodeX()[i + 1] - m.nodeX()[i]);
            before += Math.IEEEremainder(a - before, 2 * Math.PI);
            theta[i] = before;
        }
        return new RodChain(rod, links).elasticEnergy(theta, m.angle());
    }
}
