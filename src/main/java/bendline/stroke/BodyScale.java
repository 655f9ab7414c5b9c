package bendline.stroke;

import bendline.body.BodyTrace;

/**
 * Metres in a pixel where the body is.
 *
 * @param metresPerPixel positive
 * @param relativeSd 68 % uncertainty over the value
 * @param jointSdPx radius within which a joint lies with 68 % probability, pixels
 * @param basis where it comes from
 */
record BodyScale(double metresPerPixel, double relativeSd, double jointSdPx, String basis) {

    /** Grown-ups are 1.75 m tall give or take 0.09 m; common knowledge, no source. */
    static final double STATURE_M = 1.75;

    static final double STATURE_SD = 0.09 / STATURE_M;

    /** The rod's scale where the user gave a length, else that of a person of usual height. */
    static BodyScale of(Scale rod, BodyTrace body) {
        double joint = body.sights().stream()
                .flatMap(s -> s.joints().values().stream())
                .mapToDouble(j -> j.sdPx())
                .min()
                .orElse(Double.NaN);
        return rod.known()
                ? new BodyScale(rod.metresPerPixel(), rod.relativeSd(), joint, rod.basis())
                : new BodyScale(
                        STATURE_M / body.heightPx(),
                        Math.hypot(STATURE_SD, body.heightSdPx() / body.heightPx()),
                        joint,
                        "scale from a person taken to be 1.75 m ± 0.09 m tall");
    }

    /** A number in pixels as a measure in metres, or metres a second. */
    Measure metres(Quantity q, Found px) {
        Found m = px.times(metresPerPixel, relativeSd);
        return m.known() ? q.known(m.value(), m.sd(), m.basis() + "; " + basis) : q.unknown(px.basis());
    }
}
