package bendline.report;

import bendline.footage.Footage;
import bendline.footage.Picture;
import bendline.footage.PictureReader;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;

/** Stills of one cast at set times before and after its release. */
final class FilmStrip {

    /** Seconds of real time after the release. */
    static final double[] TIMES = {-0.4, -0.2, -0.1, 0, 0.1, 0.25, 0.5};

    private static final int WIDTH = 340;

    private FilmStrip() {}

    /**
     * Makes the stills and writes each as a file.
     *
     * @param set whose cast
     * @param letter {@code a} or {@code b}
     * @param folder the output folder, in which {@code frames/} exists
     * @return a still a time, without those that the clip does not reach
     */
    static List<Still> of(SetPictures set, String letter, Path folder) throws IOException {
        List<Still> out = new ArrayList<>();
        int next = 0;
        try (PictureReader reader = Footage.open(set.film()).pictures()) {
            Picture last = null;
            for (Picture p = reader.next(); p != null && next < TIMES.length; p = reader.next()) {
                while (next < TIMES.length && p.seconds() > set.clipSeconds(TIMES[next]) + 1e-6) {
                    if (last != null) {
                        out.add(still(set, letter, last, TIMES[next], folder));
                    }
                    next++;
                }
                last = p;
            }
        }
        return out;
    }

    private static Still still(SetPictures set, String letter, Picture p, double time, Path folder) throws IOException {
        int height = SetPictures.height(WIDTH);
        BufferedImage image = new BufferedImage(WIDTH, height, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        PanelPainter.draw(g, new Rectangle(0, 0, WIDTH, height), set, p);
        g.dispose();
        String file = "frames/" + letter + Words.of("%+05d", Math.round(1000 * time)) + "ms.png";
        ImageIO.write(image, "png", folder.resolve(file).toFile());
        return new Still(
                p.index(),
                time,
                file,
                StillMaker.jpeg(image),
                WIDTH,
                height,
                Words.of("The rod at %+.0f ms.", 1000 * time));
    }
}
