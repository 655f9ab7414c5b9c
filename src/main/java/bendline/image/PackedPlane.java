package bendline.image;

/**
 * A plane of float values held in one byte a pixel, in steps of a quarter up to ±31.75: enough for differences counted in
 * units of noise, at a quarter of the memory.
 *
 * @param width columns
 * @param height rows
 * @param quarters value · 4, clamped
 */
public record PackedPlane(int width, int height, byte[] quarters) {

    /** Packs a plane. */
    public static PackedPlane of(Plane plane) {
        float[] v = plane.values();
        byte[] out = new byte[v.length];
        for (int i = 0; i < out.length; i++) {
            // Rounded by cutting off a positive number, much faster than Math.round; what is no number becomes zero.
            float moved = Math.max(-127, Math.min(127, v[i] * 4)) + 128.5f;
            out[i] = (byte) (Float.isNaN(moved) ? 0 : (int) moved - 128);
        }
        return new PackedPlane(plane.width(), plane.height(), out);
    }

    /** The values again. */
    public Plane unpacked() {
        float[] out = new float[quarters.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = quarters[i] * 0.25f;
        }
        return new Plane(width, height, out);
    }
}
