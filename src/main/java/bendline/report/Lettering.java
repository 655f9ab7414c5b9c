package bendline.report;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import org.jspecify.annotations.Nullable;

/** Whether this computer can draw letters. Java needs the system's fontconfig and at least one font for that. */
final class Lettering {

    /** What is missing and what to do; null if nothing is. */
    static final @Nullable String TROUBLE = trouble();

    private Lettering() {}

    /** Whether letters can be drawn. */
    static boolean works() {
        return TROUBLE == null;
    }

    private static @Nullable String trouble() {
        BufferedImage image = new BufferedImage(8, 8, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        try {
            g.getFontMetrics(new Font(Font.SANS_SERIF, Font.PLAIN, 12)).stringWidth("0°");
            return null;
        } catch (RuntimeException | Error e) {
            // Without fontconfig or fonts Java throws whatever its native part ran into: InternalError,
            // NullPointerException,
            // UnsatisfiedLinkError, NoClassDefFoundError.
            return "This computer has no fonts that Java can use, so the charts and the lettering on the pictures are left"
                    + " out; install fontconfig and a font (on Debian: apt-get install fontconfig fonts-dejavu-core).";
        } finally {
            g.dispose();
        }
    }
}
