package bendline.rod;

/**
 * The part of a rod that bends, from where it is held to its tip.
 *
 * @param lengthM metres, 0.3 to 8
 * @param stiffnessNm2 bending stiffness EI at the root, N·m², 0.01 to 100000
 * @param stiffnessRelativeSd its 68 % uncertainty over the value, 0 to 2
 * @param massKgPerM mass per length at the root, rings and varnish included, kg/m, 0 to 5
 * @param massRelativeSd its 68 % uncertainty over the value, 0 to 2
 * @param taper how it thins
 */
public record Blank(
        double lengthM,
        double stiffnessNm2,
        double stiffnessRelativeSd,
        double massKgPerM,
        double massRelativeSd,
        Taper taper) {

    /** Pieces by which masses are added up. */
    private static final int PIECES = 200;

    /** Checks ranges. */
    public Blank {
        Ranges.check("blank length", lengthM, 0.3, 8, "m");
        Ranges.check("bending stiffness", stiffnessNm2, 0.01, 1e5, "N·m²");
        Ranges.check("uncertainty of the stiffness", stiffnessRelativeSd, 0, 2, "");
        Ranges.check("mass per metre", massKgPerM, 0, 5, "kg/m");
        Ranges.check("uncertainty of the mass", massRelativeSd, 0, 2, "");
    }

    /** A blank whose mass does not matter. */
    public static Blank massless(double lengthM, double stiffnessNm2, Taper taper) {
        return new Blank(lengthM, stiffnessNm2, 0, 0, 0, taper);
    }

    /** Bending stiffness at a distance from the root, N·m². */
    public double stiffnessAt(double metres) {
        return stiffnessNm2 * taper.stiffnessAt(metres / lengthM);
    }

    /** Mass per length at a distance from the root, kg/m. */
    public double massAt(double metres) {
        return massKgPerM * taper.massAt(metres / lengthM);
    }

    /** Mass of the whole, kg. */
    public double massKg() {
        double sum = 0;
        for (int i = 0; i < PIECES; i++) {
            sum += massAt((i + 0.5) * lengthM / PIECES);
        }
        return sum * lengthM / PIECES;
    }

    /** The same with another stiffness at the root; what is known of the shape stays. */
    public Blank withStiffness(double nm2, double relativeSd) {
        return new Blank(lengthM, nm2, relativeSd, massKgPerM, massRelativeSd, taper);
    }

    /** The same with another mass per length at the root. */
    public Blank withMass(double kgPerM, double relativeSd) {
        return new Blank(lengthM, stiffnessNm2, stiffnessRelativeSd, kgPerM, relativeSd, taper);
    }

    /** The same with another taper. */
    public Blank withTaper(Taper other) {
        return new Blank(lengthM, stiffnessNm2, stiffnessRelativeSd, massKgPerM, massRelativeSd, other);
    }

    /**
     * The part above a hand.
     *
     * @param metres from the root to the hand, at most nine tenths of the length
     */
    public Blank above(double metres) {
        Ranges.check("hand above the butt", metres, 0, 0.9 * lengthM, "m");
        return new Blank(
                lengthM - metres,
                stiffnessAt(metres),
                stiffnessRelativeSd,
                massAt(metres),
                massRelativeSd,
                taper.beyond(metres / lengthM));
    }

    /** The same shape at another length: lengths stretched, stiffness and mass per length at each share of it kept. */
    public Blank stretchedTo(double metres) {
        return new Blank(metres, stiffnessNm2, stiffnessRelativeSd, massKgPerM, massRelativeSd, taper);
    }
}
