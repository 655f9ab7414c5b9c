package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.footage.Picture;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Makes the stills of a report: the frames of every known moment and those that findings rest on. */
final class StillMaker {

    /** Width of the copies in the page: twice a phone's column. */
    private static final int PAGE_WIDTH = 680;

    /** Width of a still over its letters, so that they keep 12 pixels where a phone or a strip shows it 230 pixels wide. */
    private static final int LETTERS = 18;

    private static final float JPEG_QUALITY = 0.82f;

    private final ClipAnalysis analysis;
    private final CastPainter painter;
    private final Reader reader;
    private final Map<Integer, Rectangle> crops = new TreeMap<>();
    private final Map<Integer, Still> stills = new TreeMap<>();

    StillMaker(ClipAnalysis analysis, Reader reader) {
        this.analysis = analysis;
        this.reader = reader;
        this.painter = new CastPainter(analysis);
        for (CastAnalysis cast : analysis.casts()) {
            TreeSet<Integer> frames = new TreeSet<>(Crop.eventFrames(cast.stroke()));
            cast.review().findings().forEach(f -> frames.addAll(f.evidenceFrames()));
            frames.removeIf(i -> i < 0 || i >= analysis.trace().frames().size());
            Rectangle crop = Crop.around(analysis.trace(), frames);
            frames.forEach(i -> crops.putIfAbsent(i, crop));
        }
        if (analysis.casts().isEmpty()) {
            crops.put(
                    middle(),
                    new Rectangle(
                            0, 0, analysis.trace().width(), analysis.trace().height()));
        }
    }

    /** The frame nearest the middle of the clip in which a blank was found, or else the middle. */
    private int middle() {
        int half = analysis.trace().frames().size() / 2;
        return analysis.trace().frames().stream()
                .filter(f -> f.blank() != null)
                .map(FrameTrace::frame)
                .min(Comparator.comparingInt(f -> Math.abs(f - half)))
                .orElse(half);
    }

    /** Whether a still is made of this frame. */
    boolean wants(int frame) {
        return crops.containsKey(frame);
    }

    /**
     * Makes the still of a frame.
     *
     * @param folder the output folder, in which {@code frames/} exists
     */
    void add(Picture picture, Path folder) throws IOException {
        Rectangle crop = crops.get(picture.index());
        BufferedImage large = draw(picture, crop, Math.max(1, PAGE_WIDTH / (double) crop.width));
        String file = "frames/" + name(picture.index());
        ImageIO.write(large, "png", folder.resolve(file).toFile());
        BufferedImage small =
                large.getWidth() <= PAGE_WIDTH ? large : draw(picture, crop, PAGE_WIDTH / (double) crop.width);
        stills.put(
                picture.index(),
                new Still(
                        picture.index(),
                        picture.seconds(),
                        file,
                        jpeg(small),
                        small.getWidth(),
                        small.getHeight(),
                        alt(picture)));
    }

    /** The stills made so far, by frame. */
    Map<Integer, Still> stills() {
        return stills;
    }

    private BufferedImage draw(Picture picture, Rectangle crop, double scale) {
        int width = (int) Math.round(crop.width * scale);
        int height = (int) Math.round(crop.height * scale);
        BufferedImage out = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = out.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.scale(scale, scale);
        g.translate(-crop.x, -crop.y);
        g.drawImage(picture.image(), 0, 0, null);
        painter.paint(g, picture.index(), Math.max(1, width / 300.0) / scale);
        g.dispose();
        if (Lettering.works()) {
            letter(out, picture);
        }
        return out;
    }

    private void letter(BufferedImage image, Picture picture) {
        Stroke stroke = painter.strokeAt(picture.index());
        double angle = stroke == null ? Double.NaN : CastPainter.buttAngleDeg(stroke, picture.index());
        String text = Words.of("%.3f s", picture.seconds())
                + (Double.isFinite(angle) ? Words.of("   butt %.0f°", angle) : "");
        Plate.draw(image, reader.say(text), Math.max(13, image.getWidth() / LETTERS));
    }

    private String alt(Picture picture) {
        Stroke stroke = painter.strokeAt(picture.index());
        if (stroke == null) {
            return Words.of("The frame at %.3f s.", picture.seconds());
        }
        double angle = CastPainter.buttAngleDeg(stroke, picture.index());
        String rod = Double.isFinite(angle) ? Words.of("the butt at %.0f°", angle) : "the butt not seen";
        String tip = analysis.trace().frames().get(picture.index()).tip().seen() ? "the tip seen" : "the tip not seen";
        return Words.of("The frame at %.3f s: %s, %s.", picture.seconds(), rod, tip);
    }

    /** A name that says what the frame is. */
    private String name(int frame) {
        Stroke stroke = painter.strokeAt(frame);
        StringBuilder out = new StringBuilder();
        if (stroke != null) {
            out.append("cast").append(stroke.number()).append('-');
            for (EventKind kind : EventKind.values()) {
                Event e = stroke.event(kind);
                if (e.frame() != null && e.frame() == frame) {
                    out.append(kind.id()).append('-');
                }
            }
        }
        return out.append(Words.of("%05d", frame)).append(".png").toString();
    }

    static byte[] jpeg(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            writer.setOutput(out);
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(JPEG_QUALITY);
            BufferedImage plain = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = plain.createGraphics();
            g.drawImage(image, 0, 0, Color.BLACK, null);
            g.dispose();
            writer.write(null, new IIOImage(plain, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
