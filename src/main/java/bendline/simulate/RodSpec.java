package bendline.simulate;

/**
 * A feeder rod as the simulator needs it. Along the free part, from the upper hand to the tip, the outer diameter falls
 * in a straight line, bending stiffness EI and mass per length follow powers of it. A power of 4 and 2 is a solid cone;
 * thin-walled carbon tubes lie lower.
 *
 * @param lengthM whole length, butt cap to tip, metres, 2 to 5
 * @param handleM butt cap to upper hand, metres, 0.3 to 1.2; this part is rigid between the two hands
 * @param eiButtNm2 bending stiffness at the upper hand, N·m², 20 to 2000
 * @param eiTipNm2 bending stiffness at the tip, N·m², 0.05 up to the butt's
 * @param stiffnessPower how EI goes with the diameter, 1 to 5
 * @param massButtKgPerM mass per length at the upper hand, kg/m, 0.005 to 1
 * @param massTipKgPerM mass per length at the tip with its rings, kg/m, 0.001 up to the butt's
 * @param diameterButtMm outer diameter at the upper hand, millimetres, 5 to 40
 * @param diameterTipMm outer diameter at the tip, millimetres, 0.5 up to the butt's
 * @param lossSeconds bending damping: moment = EI·(curvature + lossSeconds·its rate), seconds, 0 to 0.02
 */
public record RodSpec(
        double lengthM,
        double handleM,
        double eiButtNm2,
        double eiTipNm2,
        double stiffnessPower,
        double massButtKgPerM,
        double massTipKgPerM,
        double diameterButtMm,
        double diameterTipMm,
        double lossSeconds) {

    /** Checks the ranges. */
    public RodSpec {
        Ranges.check("rod length (m)", lengthM, 2, 5);
        Ranges.check("rod handle (m)", handleM, 0.3, 1.2);
        Ranges.check("rod stiffness at the butt (N m2)", eiButtNm2, 20, 2000);
        Ranges.check("rod stiffness at the tip (N m2)", eiTipNm2, 0.05, eiButtNm2);
        Ranges.check("rod stiffness power", stiffnessPower, 1, 5);
        Ranges.check("rod mass per metre at the butt (kg/m)", massButtKgPerM, 0.005, 1);
        Ranges.check("rod mass per metre at the tip (kg/m)", massTipKgPerM, 0.001, massButtKgPerM);
        Ranges.check("rod diameter at the butt (mm)", diameterButtMm, 5, 40);
        Ranges.check("rod diameter at the tip (mm)", diameterTipMm, 0.5, diameterButtMm);
        Ranges.check("rod loss (s)", lossSeconds, 0, 0.02);
    }

    /** A 3.9 m feeder rod for rigs of 85 g. */
    public static RodSpec medium() {
        return matched(3.9, 0.62, 85);
    }

    /**
     * A rod whose stiffness suits a rig: a heavier rig or a longer rod asks for a stiffer blank.
     *
     * @param lengthM whole length, metres
     * @param handleM butt cap to upper hand, metres
     * @param rigMassG what it is made to cast, grams
     */
    public static RodSpec matched(double lengthM, double handleM, double rigMassG) {
        double free = (lengthM - handleM) / 3.28;
        double stiff = Math.pow(rigMassG / 85, 0.9) * free * free;
        double heavy = Math.sqrt(stiff);
        return new RodSpec(lengthM, handleM, 250 * stiff, 6 * stiff, 2.4, 0.10 * heavy, 0.014 * heavy, 15, 3.0, 0.0022);
    }

    /** Metres from the upper hand to the tip. */
    public double freeLengthM() {
        return lengthM - handleM;
    }

    /** Bending stiffness in N·m² at a distance in metres from the upper hand. */
    double eiAt(double s) {
        return along(s, eiButtNm2, eiTipNm2, stiffnessPower);
    }

    /** Mass per length in kg/m at a distance in metres from the upper hand. */
    double massPerMetreAt(double s) {
        return along(s, massButtKgPerM, massTipKgPerM, 2);
    }

    /** Outer diameter in metres at a distance in metres from the upper hand; negative distances lie on the handle. */
    double diameterAt(double s) {
        double f = Math.max(0, Math.min(1, s / freeLengthM()));
        return (diameterButtMm + f * (diameterTipMm - diameterButtMm)) / 1000;
    }

    /** Falls so that its {@code 1/power}-th power is a straight line from butt to tip: a linear taper of the diameter. */
    private double along(double s, double butt, double tip, double power) {
        double f = Math.max(0, Math.min(1, s / freeLengthM()));
        double ratio = Math.pow(tip / butt, 1 / power);
        return butt * Math.pow(1 + f * (ratio - 1), power);
    }
}
