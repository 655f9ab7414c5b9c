package bendline.simulate;

import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;

/** Makes a clip with exact truth from a scenario. The same scenario gives the same motion, truth and pixels. */
public final class Simulator {

    private Simulator() {}

    /**
     * Computes the motion of a scenario and what is true of it, without pictures.
     *
     * @param scenario what happens
     * @return the truth, frame by frame
     */
    public static Truth truth(Scenario scenario) {
        HandShake shake = new HandShake(scenario.camera(), scenario.seed());
        return new TruthWriter(scenario, motion(scenario), shake).truth();
    }

    /**
     * Renders a clip and writes its truth beside it as {@code NAME.truth.json}.
     *
     * @param scenario what happens
     * @param mp4 the clip to write; its folder must be there
     * @return the truth
     * @throws IOException where a file cannot be written
     */
    public static Truth render(Scenario scenario, Path mp4) throws IOException {
        return render(scenario, mp4, done -> {});
    }

    /**
     * The same, telling after each frame how many are done.
     *
     * @param scenario what happens
     * @param mp4 the clip to write; its folder must be there
     * @param progress is told the number of frames done
     * @return the truth
     * @throws IOException where a file cannot be written
     */
    public static Truth render(Scenario scenario, Path mp4, IntConsumer progress) throws IOException {
        Motion motion = motion(scenario);
        HandShake shake = new HandShake(scenario.camera(), scenario.seed());
        Truth truth = new TruthWriter(scenario, motion, shake).truth();
        FrameComposer composer = new FrameComposer(scenario, motion, shake);
        CameraSpec c = scenario.camera();
        boolean turned = c.rotationDegrees() % 180 != 0;
        int width = turned ? c.height() : c.width();
        int height = turned ? c.width() : c.height();
        ClipWriterSettings settings = new ClipWriterSettings(
                c.storedFps(),
                c.bitsPerSecond(),
                c.rotationDegrees(),
                c.captureFps() == c.storedFps() ? 0 : c.captureFps(),
                (int) Math.max(1, Math.round(c.storedFps())));
        try (ClipWriter writer = new ClipWriter(mp4, width, height, settings)) {
            for (int i = 0; i < truth.clip().frames(); i++) {
                writer.write(stored(composer.frame(i), c.rotationDegrees()), i / c.storedFps());
                progress.accept(i + 1);
            }
        }
        truth.write(truthBeside(mp4));
        return truth;
    }

    /**
     * Writes clip, truth and scenario into a folder, as {@code NAME.mp4}, {@code NAME.truth.json} and
     * {@code NAME.scenario.json}.
     *
     * @param scenario what happens; gives the name
     * @param folder made where it is not there
     * @return the clip
     * @throws IOException where a file cannot be written
     */
    public static Path renderInto(Scenario scenario, Path folder) throws IOException {
        Files.createDirectories(folder);
        Path mp4 = folder.resolve(scenario.name() + ".mp4");
        render(scenario, mp4);
        ScenarioFiles.writeScenario(scenario, folder.resolve(scenario.name() + ".scenario.json"));
        return mp4;
    }

    /** Where the truth of a clip lies: beside it, {@code NAME.truth.json}. */
    public static Path truthBeside(Path mp4) {
        String name = mp4.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return mp4.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + ".truth.json");
    }

    static @Nullable Motion motion(Scenario scenario) {
        if (!scenario.angler()) {
            return null;
        }
        return CastRun.compute(
                scenario.rod(),
                scenario.rig(),
                scenario.casts(),
                scenario.statureM(),
                scenario.seconds() + 1.3,
                scenario.seed());
    }

    /** The picture as stored: turned against the tag. */
    private static BufferedImage stored(BufferedImage upright, int tag) {
        if (tag == 0) {
            return upright;
        }
        boolean turned = tag % 180 != 0;
        int w = turned ? upright.getHeight() : upright.getWidth();
        int h = turned ? upright.getWidth() : upright.getHeight();
        BufferedImage out = new BufferedImage(w, h, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = out.createGraphics();
        g.translate(w / 2.0, h / 2.0);
        g.rotate(-Math.toRadians(tag));
        g.drawImage(upright, -upright.getWidth() / 2, -upright.getHeight() / 2, null);
        g.dispose();
        return out;
    }
}
