package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Point;
import bendline.image.Luma;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures show what the truth says, through encoder and rotation tag. */
class SimulatorTest {

    @TempDir
    Path folder;

    @Test
    void theBlankIsDarkWhereTheTruthSaysItIs() throws IOException {
        for (int rotation : new int[] {0, 90, 180, 270}) {
            Path clip = folder.resolve("r" + rotation + ".mp4");
            Truth truth = Simulator.render(SmallScenario.ready(rotation, 1), clip);
            assertThat(Truth.read(Simulator.truthBeside(clip))).isEqualTo(truth);
            try (LumaReader reader = Footage.open(clip).lumas()) {
                int frames = 0;
                for (Frame frame = reader.next(); frame != null; frame = reader.next()) {
                    assertThat(frame.luma().width()).isEqualTo(640);
                    Truth.Frame t = truth.frames().get(frames++);
                    assertThat(offBlank(frame.luma(), t)).isLessThan(0.6);
                }
                assertThat(frames).isEqualTo(truth.clip().frames());
            }
        }
    }

    /** Mean distance in pixels between the true blank and the darkness across it, over the part against the sky. */
    private static double offBlank(Luma luma, Truth.Frame t) {
        double sum = 0;
        int count = 0;
        for (int i = 10; i < 24; i++) {
            Point p = t.blank().get(i);
            Point d = t.blank().get(i + 1).minus(t.blank().get(i - 1));
            Point across = new Point(-d.y() / d.norm(), d.x() / d.norm());
            double edge = 0.5 * (light(luma, p.plus(across.times(7))) + light(luma, p.minus(across.times(7))));
            double weight = 0;
            double off = 0;
            for (double s = -5; s <= 5; s += 0.25) {
                double dark = Math.max(0, edge - light(luma, p.plus(across.times(s))) - 3);
                weight += dark;
                off += dark * s;
            }
            assertThat(weight).as("blank seen at point " + i).isPositive();
            sum += Math.abs(off / weight);
            count++;
        }
        return sum / count;
    }

    private static double light(Luma luma, Point p) {
        int x = (int) Math.floor(p.x() - 0.5);
        int y = (int) Math.floor(p.y() - 0.5);
        double fx = p.x() - 0.5 - x;
        double fy = p.y() - 0.5 - y;
        return (1 - fy) * ((1 - fx) * luma.at(x, y) + fx * luma.at(x + 1, y))
                + fy * ((1 - fx) * luma.at(x, y + 1) + fx * luma.at(x + 1, y + 1));
    }

    @Test
    void theSameScenarioGivesTheSamePixels() {
        int[] once = pixels();
        assertThat(pixels()).isEqualTo(once);
    }

    private static int[] pixels() {
        Scenario s = SmallScenario.ready(0, 1);
        HandShake shake = new HandShake(s.camera(), s.seed());
        BufferedImage image = new FrameComposer(s, Simulator.motion(s), shake).frame(7);
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }

    /** Exposed for a sixtieth, a fast tip leaves one smear and no string of beads. */
    @Test
    void aFastTipLeavesOneSmear() {
        Scenario s = SmallScenario.cast(0, 0);
        Motion motion = Simulator.motion(s);
        double release = motion.launches().get(0).t();
        RodPainter painter = new RodPainter(s);
        PhoneCamera camera = new PhoneCamera(s);
        double way = painter.way(camera, motion.at(release - 0.004), motion.at(release + 0.004));
        assertThat(way).isGreaterThan(8);
        assertThat(FrameComposer.subFrames(way)).isGreaterThanOrEqualTo((int) (way / 2));
    }
}
