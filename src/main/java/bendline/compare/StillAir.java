package bendline.compare;

import bendline.stroke.Measure;

/**
 * Turns a distance measured in some wind into the distance the same cast would have made in still air, so that a following
 * wind is not credited to technique.
 */
public interface StillAir {

    /**
     * The equivalent in still air.
     *
     * @param cast its distance is known
     * @return the distance with the uncertainty that the conversion adds, or a measure without a value and why
     */
    Measure of(Cast cast);

    /** Without a model of the flight: what was measured in next to no wind stands, in other winds nothing can be told. */
    StillAir UNMODELLED = cast -> {
        Measure d = cast.distance();
        if (cast.wind() != null && cast.wind().calm()) {
            return d;
        }
        return Measure.unknown(
                d.id(),
                d.label(),
                d.unit(),
                cast.wind() == null
                        ? "the wind was not written down"
                        : "the sets were cast in different winds, and what this wind did can't be taken out");
    };
}
