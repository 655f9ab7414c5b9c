package bendline.flight;

/**
 * The air that is flown through.
 *
 * @param densityKgPerM3 1.0 to 1.5
 * @param viscosityPaS dynamic
 */
public record Air(double densityKgPerM3, double viscosityPaS) {

    private static final double GAS_CONSTANT = 287.05287;
    private static final double SEA_LEVEL_PA = 101_325;

    /** ISA sea level, ISO 2533: 15 °C, 1013.25 hPa. */
    public static final Air STANDARD = at(15, SEA_LEVEL_PA);

    /** Checks ranges. */
    public Air {
        Amounts.check("air density", densityKgPerM3, 0.8, 1.6, "kg/m3");
        Amounts.check("air viscosity", viscosityPaS, 1e-5, 3e-5, "Pa s");
    }

    /** Dry air at a pressure; density of an ideal gas, viscosity after Sutherland as in the US Standard Atmosphere 1976. */
    public static Air at(double celsius, double pascal) {
        double kelvin = celsius + 273.15;
        return new Air(pascal / (GAS_CONSTANT * kelvin), 1.458e-6 * Math.pow(kelvin, 1.5) / (kelvin + 110.4));
    }

    /** Kinematic viscosity, m²/s. */
    public double kinematicViscosity() {
        return viscosityPaS / densityKgPerM3;
    }
}
