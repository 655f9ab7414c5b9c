package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.Progress;
import bendline.body.Faces;
import bendline.footage.Footage;
import bendline.geometry.Point;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FaceVeilTest {

    private static final Faces.Spot SPOT = new Faces.Spot(new Point(100, 80), 30);

    /** A chequerboard holds more detail than any face. */
    private static BufferedImage detailed() {
        BufferedImage image = new BufferedImage(200, 160, BufferedImage.TYPE_3BYTE_BGR);
        Random random = new Random(5);
        for (int y = 0; y < 160; y++) {
            for (int x = 0; x < 200; x++) {
                image.setRGB(x, y, random.nextInt(0x1000000));
            }
        }
        return image;
    }

    @Test
    void underAPatchOnlyAFewCoarseFieldsAreLeft() {
        BufferedImage image = detailed();
        new FaceVeil(new Faces(List.of(List.of(SPOT)))).cover(image, 0);
        double steps = 0;
        int n = 0;
        for (int y = 62; y < 98; y++) {
            for (int x = 82; x < 117; x++) {
                steps += Math.abs((image.getRGB(x + 1, y) & 255) - (image.getRGB(x, y) & 255));
                n++;
            }
        }
        // Of neighbours in noise over the whole range the mean step is 85, a third of it.
        assertThat(steps / n).isLessThan(3);
    }

    @Test
    void besideAPatchAndInOtherFramesNothingChanges() {
        BufferedImage image = detailed();
        new FaceVeil(new Faces(List.of(List.of(SPOT)))).cover(image, 1);
        assertThat(image.getRGB(100, 80)).isEqualTo(detailed().getRGB(100, 80));
        new FaceVeil(new Faces(List.of(List.of(SPOT)))).cover(image, 0);
        assertThat(image.getRGB(100, 80)).isNotEqualTo(detailed().getRGB(100, 80));
        assertThat(image.getRGB(60, 80)).isEqualTo(detailed().getRGB(60, 80));
    }

    @Test
    void aPatchMayReachOverTheEdge() {
        BufferedImage image = detailed();
        Faces over =
                new Faces(List.of(List.of(new Faces.Spot(new Point(-5, 2), 30), new Faces.Spot(new Point(900, 9), 5))));
        new FaceVeil(over).cover(image, 0);
        assertThat(image.getRGB(2, 2)).isNotEqualTo(detailed().getRGB(2, 2));
    }

    /** A patch over a thing painted blue takes the blue out of every picture there is: stills, page and marked clip. */
    @Test
    void everythingWrittenIsCovered(@TempDir Path temp) throws IOException {
        Path clip = AnalyticCast.render(temp.resolve("cast.mp4"));
        Faces.Spot rig =
                new Faces.Spot(new Point(AnalyticCast.WIDTH / 2.0, AnalyticCast.HEIGHT / 2.0), AnalyticCast.WIDTH);
        Faces all = new Faces(Collections.nCopies(AnalyticCast.FRAMES, List.of(rig)));
        Path plain = temp.resolve("plain");
        Path veiled = temp.resolve("veiled");
        new CastFolder().write(AnalyticCast.analysis(clip), plain, Progress.SILENT);
        new CastFolder().write(AnalyticCast.analysis(clip), veiled, all, Progress.SILENT);
        assertThat(Files.readString(veiled.resolve("report.html")))
                .isNotEqualTo(Files.readString(plain.resolve("report.html")));
        try (Stream<Path> stills = Files.list(veiled.resolve("frames"))) {
            for (Path still : stills.toList()) {
                BufferedImage a = ImageIO.read(still.toFile());
                BufferedImage b = ImageIO.read(
                        plain.resolve("frames").resolve(still.getFileName()).toFile());
                assertThat(ground(a)).as(still.getFileName().toString()).isNotEqualTo(ground(b));
            }
        }
        assertThat(ground(
                        Footage.open(veiled.resolve("marked.mp4")).pictureAt(1).image()))
                .isNotEqualTo(ground(
                        Footage.open(plain.resolve("marked.mp4")).pictureAt(1).image()));
    }

    /** A row across the middle, where the sharp edge of the drawn ground is blurred away by a patch over all. */
    private static List<Integer> ground(BufferedImage image) {
        return Stream.iterate(0, y -> y < image.getHeight() * 3 / 4, y -> y + 4)
                .map(y -> new Color(image.getRGB(4, y)).getGreen() / 16)
                .toList();
    }
}
