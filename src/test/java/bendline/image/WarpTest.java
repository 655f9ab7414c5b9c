package bendline.image;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Homography;
import java.util.List;
import java.util.Random;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;
import org.junit.jupiter.api.Test;

/** Held against OpenCV's warpPerspective, which rounds places to a 32nd of a pixel and repeats the edge, as ours does. */
class WarpTest {

    private static final Area PART = new Area(4, 2, 301, 190);
    private static final Homography HAND_HELD = new Homography(1.001, 0.004, 6.3, -0.004, 0.999, -4.7, 2e-6, -3e-6);

    private static Luma noisy() {
        Random random = new Random(7);
        byte[] pixels = new byte[320 * 200];
        random.nextBytes(pixels);
        return new Luma(320, 200, pixels);
    }

    /** Hand-held; turned far to either side and nearer or farther away, so that places fall out of step in every way. */
    @Test
    void picturesComeOutAsOpenCvMakesThem() {
        Homography near = new Homography(1.06, 0.09, -14.6, -0.09, 1.05, 9.2, 1e-5, -4e-5);
        Homography far = new Homography(0.93, -0.3, 60.4, 0.3, 0.95, -31.7, -3e-5, 2e-5);
        for (Homography map : List.of(HAND_HELD, near, far, Homography.shift(-3.4, 2.7))) {
            byte[] ours = Warp.apply(noisy(), map, PART).pixels();
            byte[] theirs = openCv(noisy(), map, PART);
            int other = 0;
            for (int i = 0; i < ours.length; i++) {
                other += ours[i] == theirs[i] ? 0 : 1;
            }
            // A place half way between two 32nds may go either way.
            assertThat(other).as("of %s", map).isLessThan(ours.length / 5000);
        }
    }

    @Test
    void aPictureThatIsNotMovedIsOnlyCut() {
        Luma source = noisy();
        Luma cut = Warp.apply(source, Homography.IDENTITY, PART);
        assertThat(cut.at(0, 0)).isEqualTo(source.at(4, 2));
        assertThat(cut.at(300, 189)).isEqualTo(source.at(304, 191));
        assertThat(cut.pixels()).isEqualTo(openCv(source, Homography.IDENTITY, PART));
    }

    @Test
    void reducedPixelsAreMeansOfSquares() {
        Luma small = Warp.reduce(new Luma(5, 2, new byte[] {1, 2, 10, 20, 99, 3, 4, 30, 41, 99}), 2);
        assertThat(small).extracting(Luma::width, Luma::height).containsExactly(2, 1);
        assertThat(small.pixels()).containsExactly(3, 25);
    }

    private static byte[] openCv(Luma source, Homography map, Area area) {
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
        return out;
    }
}
