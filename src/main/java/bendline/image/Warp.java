package bendline.image;

import bendline.geometry.Homography;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;

/** Geometric changes of grey planes. */
public final class Warp {

    private Warp() {}

    /**
     * The plane as seen in other coordinates: a point {@code p} of the source appears at {@code map.apply(p)}. What lies
     * outside the source repeats its edge.
     */
    public static Luma apply(Luma source, Homography map) {
        return apply(source, map, new Area(0, 0, source.width(), source.height()));
    }

    /** The same, only for an area of the target, whose top left corner becomes the origin. */
    public static Luma apply(Luma source, Homography map, Area area) {
        if (map.equals(Homography.IDENTITY) && area.covers(source)) {
            return source;
        }
        // OpenCV puts the centre of the first pixel at (0, 0).
        Homography m =
                Homography.shift(0.5, 0.5).then(map).then(Homography.shift(-0.5 - area.left(), -0.5 - area.top()));
        byte[] out = new byte[area.width() * area.height()];
        try (BytePointer in = new BytePointer(source.pixels());
                BytePointer result = new BytePointer(out.length);
                DoublePointer values = new DoublePointer(m.a(), m.b(), m.c(), m.d(), m.e(), m.f(), m.g(), m.h(), 1);
                Mat from = new Mat(source.height(), source.width(), opencv_core.CV_8UC1, in);
                Mat to = new Mat(area.height(), area.width(), opencv_core.CV_8UC1, result);
                Mat matrix = new Mat(3, 3, opencv_core.CV_64FC1, values);
                Size size = new Size(area.width(), area.height());
                Scalar border = new Scalar(0)) {
            opencv_imgproc.warpPerspective(
                    from, to, matrix, size, opencv_imgproc.INTER_LINEAR, opencv_core.BORDER_REPLICATE, border);
            result.get(out);
        }
        return new Luma(area.width(), area.height(), out);
    }

    /** The plane reduced by a whole factor, each pixel the mean of a square. */
    public static Luma reduce(Luma source, int factor) {
        if (factor < 1 || factor > source.width() || factor > source.height()) {
            throw new IllegalArgumentException(
                    "cannot reduce a " + source.width() + "x" + source.height() + " plane by " + factor);
        }
        if (factor == 1) {
            return source;
        }
        int width = source.width() / factor;
        int height = source.height() / factor;
        byte[] out = new byte[width * height];
        int area = factor * factor;
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                int sum = 0;
                for (int j = 0; j < factor; j++) {
                    int at = (row * factor + j) * source.width() + column * factor;
                    for (int i = 0; i < factor; i++) {
                        sum += source.pixels()[at + i] & 0xff;
                    }
                }
                out[row * width + column] = (byte) ((sum + area / 2) / area);
            }
        }
        return new Luma(width, height, out);
    }
}
