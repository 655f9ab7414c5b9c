package bendline.stroke;

import bendline.geometry.Point;
import bendline.rod.BendReading;
import java.util.Arrays;
import java.util.List;

/**
 * A load curve while it is read, one entry per bend arc. Each frame by itself: a forward stroke is ten frames long, and smoothing over
 * them would flatten its peak.
 */
final class LoadTable {

    private final double[] clip;
    private final double[] real;
    private final double[] newtons;
    private final double[] newtonsSd;
    private final double[] direction;
    private final double[] directionSd;
    private final double[] energy;
    private final double[] energySd;
    private final double[] centre;
    private final double[] without;

    LoadTable(List<BendArc> arcs) {
        clip = arcs.stream().mapToDouble(BendArc::clipSeconds).toArray();
        real = arcs.stream().mapToDouble(BendArc::realSeconds).toArray();
        int n = clip.length;
        newtons = nothing(n);
        newtonsSd = nothing(n);
        direction = nothing(n);
        directionSd = nothing(n);
        energy = nothing(n);
        energySd = nothing(n);
        centre = nothing(n);
        without = nothing(n);
    }

    private static double[] nothing(int n) {
        double[] out = new double[n];
        Arrays.fill(out, Double.NaN);
        return out;
    }

    void force(int i, BendReading r, double sd) {
        newtons[i] = r.newtons();
        newtonsSd[i] = sd;
        Point f = r.force();
        direction[i] = f == null ? Double.NaN : f.angle();
        directionSd[i] = r.directionSd();
    }

    void energy(int i, BendReading r, double readSd, double common) {
        energy[i] = r.energyJ();
        energySd[i] = Math.hypot(readSd, common * r.energyJ());
        centre[i] = r.shape() == null ? Double.NaN : r.shape().bendCentre();
    }

    void withoutInertia(int i, double n) {
        without[i] = n;
    }

    /**
     * Another reading of the same pull: the mean of both, each as sure as it says. Where they lie further apart than that allows, the
     * mean is as unsure as they disagree (Birge, Physical Review 40 (1932) 207, from memory).
     */
    void weigh(int i, double n, double sd) {
        if (Double.isNaN(newtons[i])) {
            newtons[i] = n;
            newtonsSd[i] = sd;
            return;
        }
        double a = 1 / (newtonsSd[i] * newtonsSd[i]);
        double b = 1 / (sd * sd);
        double apart = (newtons[i] - n) * (newtons[i] - n) * a * b / (a + b);
        newtons[i] = (a * newtons[i] + b * n) / (a + b);
        newtonsSd[i] = Math.sqrt(Math.max(1, apart) / (a + b));
    }

    /** Something goes on there that frames don't show: as unsure as it may be large. */
    void doubt(double from, double to, double n) {
        for (int i = 0; i < real.length; i++) {
            if (real[i] >= from && real[i] <= to) {
                newtonsSd[i] = Math.hypot(newtonsSd[i], n);
            }
        }
    }

    LoadCurve curve(String basis, double doubt) {
        return new LoadCurve(
                clip,
                real,
                newtons,
                newtonsSd,
                direction,
                directionSd,
                energy,
                energySd,
                centre,
                without,
                basis,
                doubt);
    }
}
