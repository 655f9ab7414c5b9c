package bendline.simulate;

/** Angles and rates of the links, place and speed of the rig. Mutable; owned by one stepper. */
final class ChainState {

    /** Link angles, radians, and their rates. */
    final double[] theta;

    final double[] omega;
    double rigX;
    double rigY;
    double rigVx;
    double rigVy;

    ChainState(int links) {
        this.theta = new double[links];
        this.omega = new double[links];
    }

    void set(ChainState other) {
        System.arraycopy(other.theta, 0, theta, 0, theta.length);
        System.arraycopy(other.omega, 0, omega, 0, omega.length);
        rigX = other.rigX;
        rigY = other.rigY;
        rigVx = other.rigVx;
        rigVy = other.rigVy;
    }
}
