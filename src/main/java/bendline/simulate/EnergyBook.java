package bendline.simulate;

/**
 * Energy of rod, rig and line, in joules, booked step by step.
 *
 * @param work done by the hands since the start
 * @param kinetic of blank and rig
 * @param elastic in the blank's bend and the line's stretch
 * @param gravity against the ground
 * @param dissipated since the start: bending loss, air, line
 */
record EnergyBook(double work, double kinetic, double elastic, double gravity, double dissipated) {

    /** What is held now plus what was lost, less the work put in; constant when the books balance. */
    double balance() {
        return kinetic + elastic + gravity + dissipated - work;
    }
}
