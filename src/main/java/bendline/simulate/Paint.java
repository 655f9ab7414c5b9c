package bendline.simulate;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;

/** The canvas of a backdrop with a margin around the frame, and mixing of colours 0xRRGGBB. */
final class Paint {

    final int width;
    final int height;
    final int margin;
    final BufferedImage image;
    final int[] rgb;
    final byte[] water;

    Paint(int frameWidth, int frameHeight, int margin) {
        this.width = frameWidth + 2 * margin;
        this.height = frameHeight + 2 * margin;
        this.margin = margin;
        this.image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        this.rgb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        this.water = new byte[width * height];
    }

    /** Mixes a colour into a pixel; outside the canvas nothing happens. */
    void blend(int x, int y, int colour, double share) {
        if (x >= 0 && y >= 0 && x < width && y < height && share > 0) {
            int i = y * width + x;
            rgb[i] = mix(rgb[i], colour, share);
        }
    }

    /** From one colour to another. */
    static int mix(int a, int b, double share) {
        double f = Math.max(0, Math.min(1, share));
        return channel(a >> 16 & 255, b >> 16 & 255, f) << 16
                | channel(a >> 8 & 255, b >> 8 & 255, f) << 8
                | channel(a & 255, b & 255, f);
    }

    private static int channel(int a, int b, double f) {
        return (int) Math.round(a + f * (b - a));
    }

    /** A colour lighter or darker by a factor. */
    static int lit(int colour, double factor) {
        return clamp((colour >> 16 & 255) * factor) << 16
                | clamp((colour >> 8 & 255) * factor) << 8
                | clamp((colour & 255) * factor);
    }

    private static int clamp(double v) {
        return (int) Math.max(0, Math.min(255, Math.round(v)));
    }
}
