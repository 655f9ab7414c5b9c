package bendline.stroke;

import bendline.signal.SmoothCurve;

/**
 * The smooth series in which a stroke's moments are looked for; real seconds, radians, pixels.
 *
 * @param angle butt angle
 * @param forwardRate rate at which it falls
 * @param handRate forward speed of the upper hand
 * @param chord chord ratio
 * @param lag angle of the chord behind the butt's direction, positive where the tip trails a forward stroke
 * @param lagRate rate at which that grows
 */
record Curves(
        SmoothCurve angle,
        SmoothCurve forwardRate,
        SmoothCurve handRate,
        SmoothCurve chord,
        SmoothCurve lag,
        SmoothCurve lagRate) {

    /** A moment, or another where there is none. */
    static double or(double found, double other) {
        return Double.isNaN(found) ? other : found;
    }
}
