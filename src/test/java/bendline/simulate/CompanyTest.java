package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import java.awt.image.BufferedImage;
import org.junit.jupiter.api.Test;

/** People who walk by, a neighbour who casts, bushes: drawn, and without a part in what is true of the angler. */
class CompanyTest {

    private static final Scenario ALONE = SmallScenario.cast(0, 0);
    private static final int FRAME = 60;

    private static Scenario with(int walkers, boolean neighbour, double bush) {
        return new Scenario(
                ALONE.name(),
                ALONE.seed(),
                ALONE.seconds(),
                ALONE.leftToRight(),
                true,
                ALONE.statureM(),
                ALONE.tipColour(),
                ALONE.rod(),
                ALONE.rig(),
                ALONE.casts(),
                ALONE.camera(),
                ALONE.scene().with(walkers, neighbour, bush));
    }

    private static BufferedImage picture(Scenario s) {
        return new FrameComposer(s, Simulator.motion(s), new HandShake(s.camera(), s.seed())).frame(FRAME);
    }

    /** Share of the pixels of a box, given in metres of the plane of the cast, that differ between two pictures. */
    private static double changed(BufferedImage a, BufferedImage b, double x, double y, double half) {
        PhoneCamera camera = new PhoneCamera(ALONE);
        Point low = camera.plane(x - half, y - half);
        Point high = camera.plane(x + half, y + half);
        int differ = 0;
        int all = 0;
        for (int v = (int) high.y(); v < low.y(); v++) {
            for (int u = (int) low.x(); u < high.x(); u++) {
                differ += a.getRGB(u, v) == b.getRGB(u, v) ? 0 : 1;
                all++;
            }
        }
        return (double) differ / all;
    }

    @Test
    void bushesHideTheLegsAndNotTheHead() {
        BufferedImage alone = picture(ALONE);
        BufferedImage hidden = picture(with(0, false, 1.2));
        assertThat(changed(alone, hidden, 0, 0.6, 0.25)).isGreaterThan(0.6);
        assertThat(changed(alone, hidden, 0, 2.1, 0.3)).isZero();
    }

    @Test
    void aNeighbourStandsBehindTheAnglerWithARodOfTheirOwn() {
        BufferedImage alone = picture(ALONE);
        BufferedImage beside = picture(with(0, true, 0));
        int rod = 0;
        for (int v = 0; v < alone.getHeight() / 2; v++) {
            for (int u = 0; u < alone.getWidth(); u++) {
                rod += alone.getRGB(u, v) == beside.getRGB(u, v) ? 0 : 1;
            }
        }
        assertThat(rod).isBetween(40, 3000);
    }

    @Test
    void walkersMoveOn() {
        Scenario walked = with(2, false, 0);
        FrameComposer film = new FrameComposer(walked, Simulator.motion(walked), new HandShake(walked.camera(), 1));
        double crosses = walked.casts().get(0).pushFrom();
        int before = (int) (30 * (crosses - 0.7)) - 30;
        int place = column(film.frame(before));
        assertThat(column(film.frame(before + 20))).isGreaterThan(place + 10);
    }

    /** The first column from the left that differs from the picture without walkers at head height of the ground. */
    private static int column(BufferedImage with) {
        BufferedImage alone = picture(ALONE);
        int row = (int) new PhoneCamera(ALONE).plane(0, 0.3).y();
        for (int u = 0; u < with.getWidth(); u++) {
            if (with.getRGB(u, row) != alone.getRGB(u, row)) {
                return u;
            }
        }
        return -1;
    }

    @Test
    void whatIsTrueOfTheAnglerStays() {
        Truth alone = Simulator.truth(ALONE);
        Truth busy = Simulator.truth(with(3, true, 1.2));
        assertThat(busy.frames()).isEqualTo(alone.frames());
        assertThat(busy.casts()).isEqualTo(alone.casts());
    }
}
