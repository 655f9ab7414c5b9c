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

    /** Flown with this rig, line and wind, and again without the wind; what was cast in next to no wind stands as it is. */
    StillAir FLOWN = new FlownStillAir();
}
