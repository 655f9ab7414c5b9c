package bendline.web;

import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import bendline.footage.Footage;
import bendline.footage.Picture;
import bendline.footage.PictureReader;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;

/** A sample with every second frame left out and half as wide, which is looked at sooner. */
final class SmallClip {

    private SmallClip() {}

    static Path write(Path sample, Path to) throws IOException {
        try (PictureReader reader = Footage.open(sample).pictures();
                ClipWriter writer = new ClipWriter(to, 640, 360, ClipWriterSettings.of(60, 1_500_000))) {
            for (Picture p = reader.next(); p != null; p = reader.next()) {
                if (p.index() % 2 == 0) {
                    writer.write(half(p.image()), p.seconds());
                }
            }
        }
        return to;
    }

    private static BufferedImage half(BufferedImage image) {
        BufferedImage small = new BufferedImage(640, 360, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = small.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(image, 0, 0, 640, 360, null);
        g.dispose();
        return small;
    }
}
