package bendline.simulate;

import java.awt.Color;
import java.awt.TexturePaint;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;

/** A woven, worn, creased stuff in one colour, as a paint that moves with what it covers. */
final class Cloth {

    private static final int SIZE = 128;

    private final BufferedImage weave;

    Cloth(Color colour, double creases, long seed) {
        Noise noise = new Noise(seed);
        this.weave = new BufferedImage(SIZE, SIZE, BufferedImage.TYPE_INT_RGB);
        int rgb = colour.getRGB() & 0xffffff;
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                // Folding the plane makes the tile repeat without a seam.
                double u = Math.abs(x - SIZE / 2);
                double v = Math.abs(y - SIZE / 2);
                double crease = noise.cloud(u / 11, v / 5, 3) - 0.5;
                double thread = noise.hash(x, y) - 0.5;
                weave.setRGB(x, y, Paint.lit(rgb, 1 + creases * crease + 0.12 * thread));
            }
        }
    }

    /** The paint with its origin at a place, a tile being so many pixels wide. */
    TexturePaint at(double x, double y, double tile) {
        return new TexturePaint(weave, new Rectangle2D.Double(x, y, tile, tile));
    }
}
