package bendline.stroke;

import bendline.body.BodyTrace;
import bendline.scene.Setup;
import bendline.trace.Trace;
import java.util.Locale;

/**
 * Metres in a pixel.
 *
 * @param metresPerPixel NaN where nothing tells
 * @param relativeSd 68 % uncertainty over the value
 * @param basis where it comes from, or what to give so that it can be told
 */
record Scale(double metresPerPixel, double relativeSd, String basis) {

    /** How much {@link Setup#HANDLE_SHARE} differs from rod to rod. */
    private static final double HANDLE_SHARE_SD = 0.025;

    /** What a camera that is not quite square to the cast does to lengths. */
    private static final double CAMERA_SD = 0.03;

    /** Uncertainties by which two lengths must differ to contradict each other. */
    private static final double CONTRADICTION = 3;

    /** A length that nothing contradicts is known to a tenth. */
    private static final double MOST_FOR_A_BLANK = 0.2;

    static Scale of(Trace trace, Setup setup) {
        double measured = trace.freeLengthSdPx() / trace.freeLengthPx();
        Double free = setup.freeLengthM();
        if (free != null) {
            return new Scale(
                    free / trace.freeLengthPx(), Math.hypot(measured, CAMERA_SD), "scale from the given free length");
        }
        Double rod = setup.rodLengthM();
        if (rod != null) {
            double handle = HANDLE_SHARE_SD / (1 - Setup.HANDLE_SHARE);
            return new Scale(
                    rod * (1 - Setup.HANDLE_SHARE) / trace.freeLengthPx(),
                    Math.hypot(handle, Math.hypot(measured, CAMERA_SD)),
                    "scale from the given rod length, with an estimated 16.5 % ± 2.5 % of it behind the upper hand");
        }
        return new Scale(
                Double.NaN,
                Double.NaN,
                "needs a length in metres: give the rod's length or its length above the upper hand");
    }

    /**
     * The same held against the caster's own height. Where a person of that height is hardly to be found, one of the two is wrong, and
     * lengths are no better known than by that much.
     *
     * @param body nobody followed says nothing
     */
    Scale against(BodyTrace body) {
        if (!known() || !(body.heightPx() > 0)) {
            return this;
        }
        double stature = metresPerPixel * body.heightPx();
        double off = Math.abs(Math.log(stature / BodyScale.STATURE_M));
        double seen = Math.hypot(body.heightSdPx() / body.heightPx(), relativeSd);
        if (!(off > CONTRADICTION * Math.hypot(BodyScale.STATURE_SD, seen))) {
            return this;
        }
        return new Scale(
                metresPerPixel,
                Math.hypot(relativeSd, off),
                basis
                        + String.format(
                                Locale.ROOT,
                                "; but the caster would then be %.1f m tall: check the rod's length, till then all in metres is as"
                                        + " unsure as that",
                                stature));
    }

    /** Whether a length is so unsure that nothing of the blank, which goes as its powers, can be told from it. */
    boolean doubtful() {
        return relativeSd > MOST_FOR_A_BLANK;
    }

    boolean known() {
        return !Double.isNaN(metresPerPixel);
    }
}
