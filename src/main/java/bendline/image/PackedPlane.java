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
        return of(plane, new byte[plane.values().length]);
    }

    /** Packs a plane into an array of as many bytes as it has values. */
    public static PackedPlane of(Plane plane, byte[] out) {
        float[] v = plane.values();
        for (int i = 0; i < out.length; i++) {
            // Rounded by cutting off a positive number, much faster than Math.round.
            int moved = (int) (v[i] * 4 + 128.5f);
            if (moved > 255) {
                moved = 255;
            } else if (moved < 1) {
                // What is no number becomes zero.
                moved = Float.isNaN(v[i]) ? 128 : 1;
            }
            out[i] = (byte) (moved - 128);
        }
        return new PackedPlane(plane.width(), plane.height(), out);
    }

    /** The values again. */
    public Plane unpacked() {
        return unpacked(new PlanePool());
    }

    /** The same in a plane from a pool, to which the caller gives it back. */
    public Plane unpacked(PlanePool pool) {
        return unpacked(new Area(0, 0, width, height), pool);
    }

    /** The values inside an area, whose corner becomes the origin. */
    public Plane unpacked(Area area) {
        return unpacked(area, new PlanePool());
    }

    /** The values inside an area in a plane from a pool. */
    public Plane unpacked(Area area, PlanePool pool) {
        Plane plane = pool.take(area.width(), area.height());
        float[] out = plane.values();
        for (int row = 0; row < area.height(); row++) {
            int from = (area.top() + row) * width + area.left();
            int to = row * area.width();
            for (int i = 0; i < area.width(); i++) {
                out[to + i] = quarters[from + i] * 0.25f;
            }
        }
        return plane;
    }
}
