package bendline.footage;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.function.DoubleConsumer;
import java.util.function.IntPredicate;
import javax.imageio.ImageIO;

/** Frames of a clip as JPEG files, so that a browser can show exactly the frame it was asked for. */
public final class FramePictures {

    private FramePictures() {}

    /**
     * Writes {@code N.jpg} for each wanted frame N.
     *
     * @param into an empty folder
     * @param wanted which frames
     * @param longestPx the longer side at most, pixels
     * @param progress told 0 to 1
     * @throws FootageException where the clip can't be used
     */
    public static void write(Footage footage, Path into, IntPredicate wanted, int longestPx, DoubleConsumer progress) {
        int frames = footage.survey(done -> {}).frames();
        try (PictureReader reader = footage.pictures()) {
            for (Picture p = reader.next(); p != null; p = reader.next()) {
                if (wanted.test(p.index())) {
                    BufferedImage image = within(p.image(), longestPx);
                    if (!ImageIO.write(
                            image, "jpg", into.resolve(p.index() + ".jpg").toFile())) {
                        throw new IllegalStateException("Java on this computer writes no JPEG");
                    }
                }
                progress.accept((p.index() + 1.0) / frames);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the frames could not be written to " + into, e);
        }
    }

    private static BufferedImage within(BufferedImage image, int longestPx) {
        double scale = longestPx / (double) Math.max(image.getWidth(), image.getHeight());
        if (scale >= 1) {
            return image;
        }
        int width = (int) Math.round(scale * image.getWidth());
        int height = (int) Math.round(scale * image.getHeight());
        BufferedImage small = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = small.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(image, 0, 0, width, height, null);
        g.dispose();
        return small;
    }
}
