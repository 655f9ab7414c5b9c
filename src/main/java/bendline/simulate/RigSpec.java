package bendline.simulate;

/**
 * What flies, and the piece of line it hangs on.
 *
 * @param massG loaded mass, grams, 10 to 300
 * @param dropM tip to rig before the cast, metres, 0.3 to 4
 * @param dragAreaCm2 drag coefficient times frontal area, cm², 0 to 100
 * @param lineStiffnessN pull per unit of stretch of the line (EA), newtons, 100 to 20000
 * @param lineLossSeconds damping of the stretch, seconds, 0 to 0.01
 * @param linePullN pull of the running line on the flying rig, newtons, 0 to 3
 * @param clipM how far from the tip the line clip stops the rig, metres, 5 to 200; 0 for a line that is not clipped
 * @param featherN how much more the line pulls over the last {@value RigLine#FEATHERED_M} m before the clip, a finger laid
 *     on the spool's lip, newtons, 0 to 10
 */
public record RigSpec(
        double massG,
        double dropM,
        double dragAreaCm2,
        double lineStiffnessN,
        double lineLossSeconds,
        double linePullN,
        double clipM,
        double featherN) {

    /** Checks the ranges. */
    public RigSpec {
        Ranges.check("rig mass (g)", massG, 10, 300);
        Ranges.check("drop (m)", dropM, 0.3, 4);
        Ranges.check("rig drag area (cm2)", dragAreaCm2, 0, 100);
        Ranges.check("line stiffness (N)", lineStiffnessN, 100, 20000);
        Ranges.check("line loss (s)", lineLossSeconds, 0, 0.01);
        Ranges.check("line pull (N)", linePullN, 0, 3);
        if (clipM != 0) {
            Ranges.check("line clip (m)", clipM, 5, 200);
        }
        Ranges.check("feathering (N)", featherN, 0, 10);
    }

    /** A loaded feeder of the given mass in grams on a drop in metres, with usual line and drag. */
    public static RigSpec feeder(double massG, double dropM) {
        double dragAreaCm2 = 6.5 * Math.pow(massG / 80, 2.0 / 3);
        return new RigSpec(massG, dropM, dragAreaCm2, 1800, 0.0006, 0.25, 0, 0);
    }

    /** The same rig on a line clipped up at a distance in metres from the tip, 0 for none, feathered with newtons. */
    public RigSpec clippedAt(double metres, double featherN) {
        return new RigSpec(massG, dropM, dragAreaCm2, lineStiffnessN, lineLossSeconds, linePullN, metres, featherN);
    }

    /** Mass in kilograms. */
    double massKg() {
        return massG / 1000;
    }

    /** Deceleration by the air per square of the speed, 1/m: ρ·CdA / (2 m) in air of 1.225 kg/m³. */
    double dragPerMetre() {
        return 1.225 * dragAreaCm2 * 1e-4 / (2 * massKg());
    }
}
