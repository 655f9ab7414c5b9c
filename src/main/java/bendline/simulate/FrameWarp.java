package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;

/** Takes a frame out of the backdrop as the shaking camera sees it, the water rippling. */
final class FrameWarp {

    private static final int RUN = 32;

    private final Backdrop backdrop;
    private final int width;
    private final int height;
    private final int[] rippleX;
    private final int[] rippleY;

    FrameWarp(Backdrop backdrop, int width, int height) {
        this.backdrop = backdrop;
        this.width = width;
        this.height = height;
        this.rippleX = new int[backdrop.height()];
        this.rippleY = new int[backdrop.height()];
    }

    /** Fills a frame of blue, green and red bytes. */
    void fill(byte[] bgr, Homography stillToPicture, double t) {
        ripple(t);
        boolean still = stillToPicture.equals(Homography.IDENTITY);
        Homography back = still ? stillToPicture : stillToPicture.inverse();
        java.util.stream.IntStream.range(0, height).parallel().forEach(row -> row(bgr, back, row));
    }

    private void ripple(double t) {
        for (int y = 0; y < rippleX.length; y++) {
            double d = y / (double) height;
            rippleX[y] = (int)
                    (65536 * (0.9 * Math.sin(y * 0.9 / (0.4 + d) + 5.1 * t) + 0.5 * Math.sin(y * 0.37 - 3.3 * t)));
            rippleY[y] = (int) (65536 * (0.7 * Math.sin(y * 0.53 / (0.4 + d) - 4.3 * t)));
        }
    }

    private void row(byte[] bgr, Homography back, int row) {
        int out = 3 * row * width;
        Point from = back.apply(new Point(0.5, row + 0.5));
        for (int start = 0; start < width; start += RUN) {
            int end = Math.min(width, start + RUN);
            Point to = back.apply(new Point(end + 0.5, row + 0.5));
            int x = fixed(from.x() - 0.5 + backdrop.margin());
            int y = fixed(from.y() - 0.5 + backdrop.margin());
            int dx = fixed((to.x() - from.x()) / (end - start));
            int dy = fixed((to.y() - from.y()) / (end - start));
            for (int i = start; i < end; i++) {
                int rgb = sample(x, y);
                bgr[out++] = (byte) rgb;
                bgr[out++] = (byte) (rgb >> 8);
                bgr[out++] = (byte) (rgb >> 16);
                x += dx;
                y += dy;
            }
            from = to;
        }
    }

    private static int fixed(double v) {
        return (int) Math.round(v * 65536);
    }

    private int sample(int x, int y) {
        int column = clamp(x >> 16, backdrop.width() - 2);
        int row = clamp(y >> 16, backdrop.height() - 2);
        if (backdrop.water()[row * backdrop.width() + column] != 0) {
            int rx = x + rippleX[row];
            int ry = y + rippleY[row];
            int c = clamp(rx >> 16, backdrop.width() - 2);
            int r = clamp(ry >> 16, backdrop.height() - 2);
            if (backdrop.water()[r * backdrop.width() + c] != 0) {
                x = rx;
                y = ry;
                column = c;
                row = r;
            }
        }
        int fx = (x >> 8) & 255;
        int fy = (y >> 8) & 255;
        int[] rgb = backdrop.rgb();
        int i = row * backdrop.width() + column;
        if ((fx | fy) == 0) {
            return rgb[i];
        }
        int top = blend(rgb[i], rgb[i + 1], fx);
        int bottom = blend(rgb[i + backdrop.width()], rgb[i + backdrop.width() + 1], fx);
        return blend(top, bottom, fy);
    }

    /** Red and blue in one lane, green in another. */
    private static int blend(int a, int b, int f) {
        int ra = a & 0xff00ff;
        int ga = a & 0x00ff00;
        int rb = (ra + ((((b & 0xff00ff) - ra) * f + 0x800080) >> 8)) & 0xff00ff;
        int gb = (ga + ((((b & 0x00ff00) - ga) * f + 0x008000) >> 8)) & 0x00ff00;
        return rb | gb;
    }

    private static int clamp(int v, int most) {
        return v < 0 ? 0 : Math.min(v, most);
    }
}
