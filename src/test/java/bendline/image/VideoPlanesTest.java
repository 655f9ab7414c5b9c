package bendline.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class VideoPlanesTest {

    /**
     * Full red, green, blue, white and black: luma and colour differences by the equations of ITU-R BT.709-6, items 3.2 to 3.5
     * (Kr 0.2126, Kb 0.0722; 219 and 224 steps), worked out by hand.
     */
    private static final int[][] RGB_AND_CODES = {
        {255, 0, 0, 63, 102, 240},
        {0, 255, 0, 173, 42, 26},
        {0, 0, 255, 32, 240, 118},
        {255, 255, 255, 235, 128, 128},
        {0, 0, 0, 16, 128, 128}
    };

    @Test
    void fullColoursGetTheCodesOfTheStandard() {
        for (int[] c : RGB_AND_CODES) {
            byte[] bgr = new byte[3 * 4];
            for (int k = 0; k < 4; k++) {
                bgr[3 * k] = (byte) c[2];
                bgr[3 * k + 1] = (byte) c[1];
                bgr[3 * k + 2] = (byte) c[0];
            }
            assertIs(VideoPlanes.ofBgr(bgr, 2, 2), c);
            VideoPlanes covered = VideoPlanes.ofBgr(new byte[12], 2, 2);
            int[] opaque = new int[4];
            Arrays.fill(opaque, 0xff << 24 | c[0] << 16 | c[1] << 8 | c[2]);
            covered.cover(opaque, 0, 0, 16);
            assertIs(covered, c);
        }
    }

    private static void assertIs(VideoPlanes planes, int[] c) {
        assertThat(new int[] {planes.luma()[3] & 255, planes.blue()[0] & 255, planes.red()[0] & 255})
                .as("%s", Arrays.toString(c))
                .containsExactly(c[3], c[4], c[5]);
    }

    @Test
    void aClearDrawingChangesNothingAndAHalfClearOneGoesHalfWay() {
        VideoPlanes picture = noise();
        VideoPlanes before = noise();
        int[] argb = new int[picture.width() * picture.height()];
        picture.cover(argb, 0, 0, 32);
        assertThat(picture.luma()).isEqualTo(before.luma());
        assertThat(picture.red()).isEqualTo(before.red());
        // White at half: 128 of 255, multiplied in.
        Arrays.fill(argb, 0x80808080);
        picture.cover(argb, 0, 0, 32);
        for (int i = 0; i < argb.length; i++) {
            int was = before.luma()[i] & 255;
            assertThat(picture.luma()[i] & 255).isBetween((was + 235) / 2 - 1, (was + 235) / 2 + 2);
        }
    }

    @Test
    void aPartGoesWhereItIsPutAndIsCutOffAtTheEdge() {
        VideoPlanes picture = VideoPlanes.black(40, 20);
        picture.put(noise(), 30, 10);
        assertThat(picture.luma()[10 * 40 + 29]).isEqualTo((byte) 16);
        assertThat(picture.luma()[10 * 40 + 30]).isEqualTo(noise().luma()[0]);
        assertThat(picture.blue()[9 * 20 + 19]).isEqualTo(noise().blue()[4 * 16 + 4]);
    }

    @Test
    void anOddSizeIsRefused() {
        assertThatThrownBy(() -> new VideoPlanes(3, 2, new byte[6], new byte[1], new byte[1]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("even");
    }

    private static VideoPlanes noise() {
        byte[] bgr = new byte[3 * 32 * 32];
        new Random(5).nextBytes(bgr);
        return VideoPlanes.ofBgr(bgr, 32, 32);
    }
}
