package bendline.compare;

/**
 * A measure of one cast.
 *
 * @param cast which
 * @param value in the measure's unit
 * @param plusMinus its own 68 % uncertainty; NaN where it is not known
 */
public record Reading(Cast cast, double value, double plusMinus) {}
