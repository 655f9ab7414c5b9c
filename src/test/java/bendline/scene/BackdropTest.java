package bendline.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import bendline.footage.Frame;
import bendline.footage.Tint;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Area;
import bendline.image.Luma;
import bendline.image.Plane;
import bendline.image.PlanePool;
import bendline.image.WarpedRows;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BackdropTest {

    private static final int WIDTH = 96;
    private static final int HEIGHT = 64;
    private static final Area WHOLE = new Area(0, 0, WIDTH, HEIGHT);
    private static final int WAITS = 30;
    private static final int SWINGS = 20;

    /** A dark upright bar that waits at column 20 most of the time and then walks to the right. */
    private static int barAt(int frame) {
        return frame < WAITS ? 20 : 20 + 3 * (frame - WAITS + 1);
    }

    private static Frame frame(int index, int level, int bar, int barLevel, int blueOfBar) {
        Random random = new Random(index);
        byte[] grey = new byte[WIDTH * HEIGHT];
        byte[] blue = new byte[WIDTH * HEIGHT / 4];
        byte[] red = new byte[WIDTH * HEIGHT / 4];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                boolean inBar = x >= bar && x < bar + 4 && y > 8;
                grey[y * WIDTH + x] = (byte) ((inBar ? barLevel : level) + random.nextInt(3) - 1);
            }
        }
        for (int y = 0; y < HEIGHT / 2; y++) {
            for (int x = 0; x < WIDTH / 2; x++) {
                boolean inBar = 2 * x >= bar && 2 * x < bar + 4 && y > 4;
                blue[y * WIDTH / 2 + x] = (byte) ((inBar ? blueOfBar : 128) + random.nextInt(3) - 1);
                red[y * WIDTH / 2 + x] = (byte) (128 + random.nextInt(3) - 1);
            }
        }
        Tint tint = new Tint(new Luma(WIDTH / 2, HEIGHT / 2, blue), new Luma(WIDTH / 2, HEIGHT / 2, red));
        return new Frame(index, index / 60.0, new Luma(WIDTH, HEIGHT, grey), tint);
    }

    private static Backdrop backdrop(int barLevel, int blueOfBar) {
        Backdrop.Samples samples = new Backdrop.Samples();
        for (int i = 0; i < WAITS + SWINGS; i++) {
            samples.add(frame(i, 120, barAt(i), barLevel, blueOfBar), Homography.IDENTITY);
        }
        return samples.backdrop();
    }

    @Test
    void aThingThatWaitsLongerThanItMovesIsNoBackground() {
        Backdrop backdrop = backdrop(40, 128);
        assertThat(backdrop.grey().median().at(21, 40)).isBetween(118f, 122f);
        Plane waiting = backdrop.difference(frame(3, 120, 20, 40, 128), Homography.IDENTITY, WHOLE);
        assertThat(waiting.at(21, 40)).isLessThan(-5);
        Plane gone = backdrop.difference(frame(70, 120, 60, 40, 128), Homography.IDENTITY, WHOLE);
        assertThat(Math.abs(gone.at(21, 40))).isLessThan(3);
    }

    /** A slope of grey from 60 to 155 with a dark bar on it, exposed so many times as long. */
    private static Frame exposed(int index, double exposure) {
        Random random = new Random(index);
        byte[] grey = new byte[WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                boolean inBar = x >= barAt(index) && x < barAt(index) + 3;
                grey[y * WIDTH + x] = (byte) (exposure * (inBar ? 30 : 60 + x) + random.nextInt(3) - 1);
            }
        }
        return new Frame(index, index / 60.0, new Luma(WIDTH, HEIGHT, grey), null);
    }

    @Test
    void aChangeOfExposureOnTheWayLeavesTheDifferencesAsTheyAre() {
        Backdrop.Samples samples = new Backdrop.Samples();
        for (int i = 0; i < WAITS + SWINGS; i++) {
            samples.add(exposed(i, i % 2 == 0 ? 0.6 : 1), Homography.IDENTITY);
        }
        Backdrop backdrop = samples.backdrop();
        for (double exposure : new double[] {0.6, 1}) {
            Plane difference = backdrop.difference(exposed(45, exposure), Homography.IDENTITY, WHOLE);
            assertThat(difference.at(barAt(45) + 1, 40))
                    .as("bar at exposure %s", exposure)
                    .isLessThan(-8);
            assertThat(Math.abs(difference.at(85, 40)))
                    .as("ground at exposure %s", exposure)
                    .isLessThan(3);
        }
    }

    @Test
    void colourTellsWhatIsAsBrightAsItsBackground() {
        Backdrop backdrop = backdrop(120, 70);
        Frame yellow = frame(70, 120, 60, 120, 70);
        assertThat(Math.abs(
                        backdrop.difference(yellow, Homography.IDENTITY, WHOLE).at(61, 40)))
                .isGreaterThan(5);
        Frame grey = new Frame(70, 1, yellow.luma(), null);
        assertThat(Math.abs(
                        backdrop.difference(grey, Homography.IDENTITY, WHOLE).at(61, 40)))
                .isLessThan(3);
    }

    @Test
    void colourKeepsOneSignAlongAThing() {
        Plane difference = backdrop(120, 70).difference(frame(70, 120, 60, 120, 70), Homography.IDENTITY, WHOLE);
        for (int y = 14; y < HEIGHT - 6; y++) {
            assertThat(difference.at(61, y)).as("row " + y).isLessThan(-5);
        }
    }

    @Test
    void whatIsKnownToBeCoveredIsNotAskedAbout() {
        Backdrop.Samples samples = new Backdrop.Samples();
        for (int i = 0; i < 12; i++) {
            // In two of three frames the bar stands in one place.
            int bar = i % 3 < 2 ? 20 : 60;
            Polyline middle = new Polyline(List.of(new Point(bar + 2, 8), new Point(bar + 2, HEIGHT - 1)));
            samples.add(frame(i, 120, bar, 40, 128), Homography.IDENTITY, new Cover(i, middle, 4));
        }
        assertThat(samples.backdrop().grey().median().at(21, 40)).isBetween(118f, 122f);
    }

    @Test
    void brightnessComesBeforeColour() {
        Backdrop backdrop = backdrop(40, 70);
        Plane both = backdrop.difference(frame(70, 120, 60, 40, 70), Homography.IDENTITY, WHOLE);
        Plane grey = backdrop.grey()
                .difference(
                        new WarpedRows(frame(70, 120, 60, 40, 70).luma(), Homography.IDENTITY, WHOLE), new PlanePool());
        assertThat(both.at(61, 40)).isEqualTo(grey.at(61, 40));
    }

    @Test
    void aPartIsTheSameAsTheWhole() {
        Backdrop backdrop = backdrop(120, 70);
        Area part = new Area(40, 20, 40, 30);
        Frame frame = frame(70, 120, 60, 120, 70);
        Plane whole = backdrop.difference(frame, Homography.IDENTITY, WHOLE);
        Plane cut = backdrop.cut(part).difference(frame, Homography.IDENTITY, part);
        assertThat(Math.abs(cut.at(21, 15))).isEqualTo(Math.abs(whole.at(61, 35)), offset(2f));
    }
}
