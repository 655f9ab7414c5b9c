package bendline.stroke;

/**
 * How many times slower than life a clip plays, read from something in it that gravity moves.
 *
 * @param factor capture rate over stored rate
 * @param relativeSd 68 % uncertainty over the value
 * @param clue what moves, and how, for the user
 */
public record Pace(double factor, double relativeSd, String clue) {

    /** By how many uncertainties it lies from a stated factor. */
    public double away(double stated) {
        return Math.abs(Math.log(factor / stated)) / relativeSd;
    }
}
