package bendline.geometry;

/** Helpers for angles in radians. */
public final class Angles {

    private Angles() {}

    /** The same direction in (−π, π]. */
    public static double wrap(double radians) {
        double wrapped = Math.IEEEremainder(radians, 2 * Math.PI);
        return wrapped <= -Math.PI ? wrapped + 2 * Math.PI : wrapped;
    }

    /** Adds whole turns so that no step between neighbours exceeds half a turn; NaN entries are skipped over. */
    public static double[] unwrap(double[] radians) {
        double[] out = radians.clone();
        double last = Double.NaN;
        for (int i = 0; i < out.length; i++) {
            if (Double.isNaN(out[i])) {
                continue;
            }
            if (!Double.isNaN(last)) {
                out[i] = last + wrap(out[i] - last);
            }
            last = out[i];
        }
        return out;
    }
}
