package bendline.body;

import bendline.footage.Frame;
import bendline.footage.Tint;
import bendline.geometry.Point;
import bendline.image.Luma;

/**
 * Cuts a square out of a frame as red, green and blue, reading only the pixels it needs. Outside the picture it is black.
 * Limited range and the colour matrix of SD clips are assumed; what another one changes is less than what daylight does.
 */
final class Crop {

    private static final int BLACK = 16;
    private static final float STRETCH = 255f / 219;

    private final int size;
    private final float low;
    private final float high;
    private final float[] rgb;

    /**
     * @param size side of the result, pixels
     * @param low what black becomes
     * @param high what white becomes
     */
    Crop(int size, float low, float high) {
        this.size = size;
        this.low = low;
        this.high = high;
        this.rgb = new float[size * size * 3];
    }

    /** Row by row, three values a pixel; the array is used again for the next. */
    float[] of(Frame frame, Region region) {
        int samples = (int) Math.max(1, Math.min(4, Math.round(region.side() / size)));
        // A square has one turn: asking the region for each of half a million samples takes ten times as long.
        Point corner = region.inPicture(0, 0);
        Point across = region.inPicture(1, 0).minus(corner).times(1.0 / size);
        Point down = region.inPicture(0, 1).minus(corner).times(1.0 / size);
        int at = 0;
        for (int row = 0; row < size; row++) {
            Point first = corner.plus(down.times(row));
            for (int column = 0; column < size; column++) {
                pixel(frame, first.plus(across.times(column)), across, down, samples, at);
                at += 3;
            }
        }
        return rgb;
    }

    /** The mean of a few samples, so that a large square does not shimmer. */
    private void pixel(Frame frame, Point corner, Point across, Point down, int samples, int at) {
        float grey = 0;
        int inside = 0;
        for (int j = 0; j < samples; j++) {
            double v = (j + 0.5) / samples;
            for (int i = 0; i < samples; i++) {
                double u = (i + 0.5) / samples;
                float level = sample(
                        frame.luma(),
                        corner.x() + u * across.x() + v * down.x(),
                        corner.y() + u * across.y() + v * down.y());
                if (level >= 0) {
                    grey += level;
                    inside++;
                }
            }
        }
        if (inside == 0) {
            rgb[at] = low;
            rgb[at + 1] = low;
            rgb[at + 2] = low;
            return;
        }
        float y = (grey / inside - BLACK) * STRETCH * inside / (samples * samples);
        Tint tint = frame.tint();
        Point middle = corner.plus(across.plus(down).times(0.5));
        float blue = tint == null ? 0 : colour(tint.blue(), middle);
        float red = tint == null ? 0 : colour(tint.red(), middle);
        rgb[at] = scaled(y + 1.596f * red);
        rgb[at + 1] = scaled(y - 0.392f * blue - 0.813f * red);
        rgb[at + 2] = scaled(y + 2.017f * blue);
    }

    private float scaled(float v) {
        return low + (high - low) / 255 * Math.max(0, Math.min(255, v));
    }

    private static float colour(Luma plane, Point p) {
        float v = sample(plane, p.x() / 2, p.y() / 2);
        return v < 0 ? 0 : v - 128;
    }

    /** Bilinear value; negative outside. */
    private static float sample(Luma plane, double x, double y) {
        if (!(x >= 0 && y >= 0 && x < plane.width() && y < plane.height())) {
            return -1;
        }
        double u = Math.max(0, Math.min(plane.width() - 1.001, x - 0.5));
        double v = Math.max(0, Math.min(plane.height() - 1.001, y - 0.5));
        int column = (int) u;
        int row = (int) v;
        float fx = (float) (u - column);
        float fy = (float) (v - row);
        int right = Math.min(column + 1, plane.width() - 1);
        int below = Math.min(row + 1, plane.height() - 1);
        float top = plane.at(column, row) + fx * (plane.at(right, row) - plane.at(column, row));
        float bottom = plane.at(column, below) + fx * (plane.at(right, below) - plane.at(column, below));
        return top + fy * (bottom - top);
    }
}
