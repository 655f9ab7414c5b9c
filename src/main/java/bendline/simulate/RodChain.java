package bendline.simulate;

/**
 * The free part of a rod as a chain of equal rigid links. Link i runs from joint i to node i; joint 0 sits in the upper
 * hand. The bending stiffness EI of the blank is lumped into the joints (the first, a clamp, stands for half a link) and
 * the mass into the nodes, both by the trapezoid rule, so errors fall with the square of the link length.
 */
final class RodChain {

    /** Standard gravity, m/s². */
    static final double GRAVITY = 9.80665;

    final int links;
    final double linkM;
    /** Joint stiffness, N·m per radian. */
    final double[] stiffness;
    /** Joint damping, N·m·s per radian. */
    final double[] damping;
    /** Node masses, kg; the last is the tip. */
    final double[] mass;
    /** Mass of a node and of all beyond it, kg. */
    final double[] massBeyond;
    /** ½·ρ·Cd·d·link of each node: air drag in newtons per square of the speed across the link. */
    final double[] airDrag;

    RodChain(RodSpec rod, int links) {
        this.links = links;
        this.linkM = rod.freeLengthM() / links;
        this.stiffness = new double[links];
        this.damping = new double[links];
        this.mass = new double[links];
        this.massBeyond = new double[links];
        this.airDrag = new double[links];
        for (int i = 0; i < links; i++) {
            double share = i == 0 ? 2 : 1;
            stiffness[i] = share * rod.eiAt(i * linkM) / linkM;
            damping[i] = stiffness[i] * rod.lossSeconds();
            double node = (i + 1) * linkM;
            double part = i == links - 1 ? 0.5 : 1;
            mass[i] = part * rod.massPerMetreAt(node) * linkM;
            // 1.2 is the drag coefficient of a long cylinder across the flow below the critical Reynolds number.
            airDrag[i] = 0.5 * 1.225 * 1.2 * rod.diameterAt(node) * linkM * part;
        }
        double beyond = 0;
        for (int i = links - 1; i >= 0; i--) {
            beyond += mass[i];
            massBeyond[i] = beyond;
        }
    }

    /**
     * Link angles in radians of the chain at rest under its own weight and a constant force on its tip.
     *
     * @param butt angle of the handle, radians
     * @param gravity m/s² downwards
     * @param fx force on the tip, newtons
     * @param fy force on the tip, newtons
     * @throws IllegalStateException if Newton's iteration does not settle
     */
    double[] atRest(double butt, double gravity, double fx, double fy) {
        double[] theta = new double[links];
        java.util.Arrays.fill(theta, butt);
        // The load grows in stages: from the unloaded rod Newton would overshoot past a half turn.
        int stages = 24;
        for (int stage = 1; stage <= stages; stage++) {
            double f = (double) stage / stages;
            settle(theta, butt, gravity * f, fx * f, fy * f);
        }
        return theta;
    }

    private void settle(double[] theta, double butt, double gravity, double fx, double fy) {
        double[] diagonal = new double[links];
        double[] right = new double[links];
        for (int round = 0; round < 60; round++) {
            double largest = 0;
            for (int i = 0; i < links; i++) {
                double sin = Math.sin(theta[i]);
                double cos = Math.cos(theta[i]);
                double down = fy - gravity * massBeyond[i];
                double load = linkM * (-sin * fx + cos * down);
                double inner = stiffness[i] * (theta[i] - (i == 0 ? butt : theta[i - 1]));
                double outer = i == links - 1 ? 0 : stiffness[i + 1] * (theta[i + 1] - theta[i]);
                right[i] = load - inner + outer;
                diagonal[i] = stiffness[i] + (i == links - 1 ? 0 : stiffness[i + 1]) - linkM * (-cos * fx - sin * down);
            }
            solveTridiagonal(diagonal, right);
            for (int i = 0; i < links; i++) {
                theta[i] += right[i];
                largest = Math.max(largest, Math.abs(right[i]));
            }
            if (largest < 1e-12) {
                return;
            }
        }
        throw new IllegalStateException("the rod found no rest under this load; make it stiffer or the load lighter");
    }

    /** Solves in place; the off-diagonals are minus the stiffness of the joint between two links. */
    private void solveTridiagonal(double[] diagonal, double[] right) {
        for (int i = 1; i < links; i++) {
            double w = -stiffness[i] / diagonal[i - 1];
            diagonal[i] -= w * -stiffness[i];
            right[i] -= w * right[i - 1];
        }
        right[links - 1] /= diagonal[links - 1];
        for (int i = links - 2; i >= 0; i--) {
            right[i] = (right[i] + stiffness[i + 1] * right[i + 1]) / diagonal[i];
        }
    }

    /** Elastic energy in joules of a shape with the handle at an angle. */
    double elasticEnergy(double[] theta, double butt) {
        double sum = 0;
        for (int i = 0; i < links; i++) {
            double bend = theta[i] - (i == 0 ? butt : theta[i - 1]);
            sum += 0.5 * stiffness[i] * bend * bend;
        }
        return sum;
    }
}
