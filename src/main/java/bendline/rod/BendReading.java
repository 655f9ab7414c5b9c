package bendline.rod;

import bendline.geometry.Point;
import org.jspecify.annotations.Nullable;

/**
 * What an arc says about the pull on its tip, or why it says nothing.
 *
 * @param shape the blank that lies nearest to the points, root at the origin; null where nothing was read
 * @param root where that root lies, metres
 * @param force on the tip, newtons
 * @param covariance of the force by the reading alone: xx, xy, yy, N²
 * @param energyReadSd 68 % uncertainty of the energy by the reading alone, joules
 * @param misfit root mean square of what is left over, in stated uncertainties; well above 1 where the blank is another
 * @param stiffnessRelativeSd uncertainty of the blank's stiffness, to which force and energy are in proportion
 * @param why why nothing was read; empty where something was
 */
public record BendReading(
        @Nullable BlankShape shape,
        @Nullable Point root,
        @Nullable Point force,
        double[] covariance,
        double energyReadSd,
        double misfit,
        double stiffnessRelativeSd,
        String why) {

    static BendReading nothing(String why) {
        return new BendReading(null, null, null, new double[3], Double.NaN, Double.NaN, Double.NaN, why);
    }

    /** Whether a force was read. */
    public boolean known() {
        return force != null;
    }

    /** Size of the force, newtons; NaN where none was read. */
    public double newtons() {
        return force == null ? Double.NaN : force.norm();
    }

    /** 68 % uncertainty of the size by the reading alone, newtons. */
    public double readSd() {
        if (force == null) {
            return Double.NaN;
        }
        double size = force.norm();
        if (!(size > 0)) {
            return Math.sqrt(Math.max(covariance[0], covariance[2]));
        }
        double x = force.x() / size;
        double y = force.y() / size;
        return Math.sqrt(Math.max(0, x * x * covariance[0] + 2 * x * y * covariance[1] + y * y * covariance[2]));
    }

    /** 68 % uncertainty of the size, newtons. */
    public double newtonsSd() {
        return Math.hypot(readSd(), newtons() * stiffnessRelativeSd);
    }

    /** 68 % uncertainty of the force's direction, radians, at most half a turn. */
    public double directionSd() {
        if (force == null) {
            return Double.NaN;
        }
        double size = force.norm();
        double x = -force.y();
        double y = force.x();
        double aside =
                Math.sqrt(Math.max(0, x * x * covariance[0] + 2 * x * y * covariance[1] + y * y * covariance[2]));
        return size > 0 ? Math.min(Math.PI, aside / (size * size)) : Math.PI;
    }

    /** Energy held in the bend, joules; NaN where nothing was read. */
    public double energyJ() {
        return shape == null ? Double.NaN : shape.energyJ();
    }

    /** 68 % uncertainty of the energy, joules. */
    public double energySd() {
        return Math.hypot(energyReadSd, energyJ() * stiffnessRelativeSd);
    }
}
