package bendline.simulate;

/**
 * The line between bank and lake. The angler stands on a tongue of land, water ahead and, further off, behind.
 *
 * @param side +1 where the cast goes to the right of the picture
 * @param farZ the far shore, scene metres, negative
 * @param foldPx twice the height in pixels between horizon and far waterline
 * @param noise gives the line its bays
 */
record Shore(int side, double farZ, double foldPx, Noise noise) {

    /** Height of the water against the bank, metres. */
    static final double WATER_Y = -0.35;

    /** How far a place lies from the water's edge, metres; positive on the bank. */
    double onBank(double x, double z) {
        double wave = 0.9 * (noise.cloud(z * 0.35, 3.3, 3) - 0.5) + 0.25 * (noise.at(z * 2.1, 8) - 0.5);
        double ahead = 1.75 + 0.06 * z + wave * 1.6 - side * x;
        double back = z + 10 + 3.0 * (noise.cloud(x * 0.12, 5.1, 3) - 0.5) - 0.12 * side * x;
        return Math.min(ahead, back);
    }
}
