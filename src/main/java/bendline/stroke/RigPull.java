package bendline.stroke;

import bendline.rod.Stiffness;
import bendline.signal.Trend;
import java.util.Arrays;

/**
 * What the line pulls with, told by the rig: its mass times its acceleration less gravity's (Newton). It asks nothing of the rod, so
 * that it holds the bend's reading against something of another kind. The air's drag on the rig, under half a newton, lies across
 * the line and is left out. Where the rig's path is uncertain its acceleration is, and says so.
 *
 * @param realSeconds of every frame
 * @param newtons NaN where the rig was not seen
 * @param sd their 68 % uncertainty by the path alone
 */
record RigPull(double[] realSeconds, double[] newtons, double[] sd) {

    /** How well a loaded rig is weighed, over its value: bait and water. Common practice, no source. */
    static final double MASS_SD = 0.03;

    /** No leader that feeders are cast with holds more, newtons: what seems to pull harder is another thing. Common practice, no source. */
    static final double MOST_N = 200;

    /** No rig was weighed, or nothing was measured in metres. */
    static final RigPull NONE = new RigPull(new double[0], new double[0], new double[0]);

    /**
     * @param kg the rig as cast
     * @param step usual real time between frames
     */
    static RigPull of(RigPath path, double kg, double step) {
        int n = path.realSeconds().length;
        if (n < 4) {
            return NONE;
        }
        Trend x = StrokeTrends.smoother(step).smooth(path.realSeconds(), path.x(), path.sd());
        Trend y = StrokeTrends.smoother(step).smooth(path.realSeconds(), path.y(), path.sd());
        double[] newtons = new double[n];
        double[] sd = new double[n];
        for (int i = 0; i < n; i++) {
            boolean seen = Double.isFinite(path.x()[i]);
            double ax = x.accelerations()[i];
            double ay = y.accelerations()[i] + Stiffness.GRAVITY;
            double size = Math.hypot(ax, ay);
            double sx = x.accelerationSds()[i];
            double sy = y.accelerationSds()[i];
            newtons[i] = seen ? kg * size : Double.NaN;
            sd[i] = seen ? kg * Math.hypot(sx * ax, sy * ay) / Math.max(1e-9, size) : Double.NaN;
        }
        return new RigPull(path.realSeconds(), newtons, sd);
    }

    /** The entry of a moment, or −1. */
    int at(double realSeconds) {
        int i = Arrays.binarySearch(this.realSeconds, realSeconds);
        return i >= 0 && newtons[i] < MOST_N && Double.isFinite(sd[i]) ? i : -1;
    }
}
