package bendline.flight;

/**
 * Wind over the water, level, growing with the height.
 *
 * @param alongMps in the direction of the cast at the height of measurement; against the cast is negative
 * @param acrossMps from left to right as the angler looks, at the height of measurement
 * @param profile how it grows
 */
public record Wind(double alongMps, double acrossMps, Profile profile) {

    /** Still air. */
    public static final Wind NONE = new Wind(0, 0, Profile.OVER_WATER);

    /** More than this nobody fishes in: the edge of a storm on the Beaufort scale. */
    public static final double MOST_MPS = 25;

    /** Checks ranges. */
    public Wind {
        Amounts.check("wind", Math.hypot(alongMps, acrossMps), 0, 1.6 * MOST_MPS, "m/s");
    }

    /**
     * By speed and where it comes from.
     *
     * @param fromDeg 0 straight into the face, 90 from the right, 180 from behind, 270 from the left
     */
    public static Wind from(double speedMps, double fromDeg, Profile profile) {
        double a = Math.toRadians(fromDeg);
        return new Wind(-speedMps * Math.cos(a), -speedMps * Math.sin(a), profile);
    }

    /** As a share of the wind at the height of measurement. */
    double share(double heightM) {
        return profile.share(heightM);
    }

    boolean calm() {
        return alongMps == 0 && acrossMps == 0;
    }

    /** The same profile with another wind at its height. */
    Wind with(double along, double across) {
        return new Wind(along, across, profile);
    }

    /** How the wind grows with height, as a share of what is measured at one height. */
    public sealed interface Profile {

        /** Measured at 2 m, which is where an angler stands, over water: exponent 0.11. */
        Profile OVER_WATER = new Power(2, 0.11);

        /** Wind there over wind at the height of measurement. */
        double share(double heightM);
    }

    /**
     * {@code (z / reference) ^ exponent}. Exponents: 1/7 over open land, 0.11 over open water (Hsu, Meindl and Gilhousen 1994).
     *
     * @param referenceM where the wind is measured
     * @param exponent 0 for the same wind everywhere
     */
    public record Power(double referenceM, double exponent) implements Profile {

        /** Under this the law is not used: the wind right over the surface. */
        private static final double LEAST_M = 0.1;

        /** Checks ranges. */
        public Power {
            Amounts.check("height of the wind", referenceM, 0.5, 100, "m");
            Amounts.check("wind exponent", exponent, 0, 0.5, "");
        }

        @Override
        public double share(double heightM) {
            return Math.pow(Math.max(heightM, LEAST_M) / referenceM, exponent);
        }
    }

    /**
     * {@code ln(z / z0) / ln(reference / z0)}, neutral air. Roughness z0: calm sea 0.0002 m, short grass 0.03 m.
     *
     * @param referenceM where the wind is measured
     * @param roughnessM z0
     */
    public record Logarithmic(double referenceM, double roughnessM) implements Profile {

        /** Checks ranges. */
        public Logarithmic {
            Amounts.check("height of the wind", referenceM, 0.5, 100, "m");
            Amounts.check("roughness", roughnessM, 1e-5, 0.3, "m");
        }

        @Override
        public double share(double heightM) {
            return Math.log(Math.max(heightM, 1.05 * roughnessM) / roughnessM) / Math.log(referenceM / roughnessM);
        }
    }
}
