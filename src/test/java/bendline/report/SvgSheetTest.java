package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import javax.imageio.ImageIO;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.PNGTranscoder;
import org.junit.jupiter.api.Test;

class SvgSheetTest {

    private static final int WIDTH = 240;
    private static final int HEIGHT = 120;

    private static final SvgSheet SHEET = new SvgSheet("sheet", WIDTH, HEIGHT, "Pull & <bend>");

    private static void shapes(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(Palette.RIG.light());
        g.setStroke(new BasicStroke(3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {9, 5}, 2));
        g.draw(new Line2D.Double(10, 20.5, 220, 100.25));
        g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, 0.25f));
        g.setColor(Palette.TIP.light());
        g.fill(new Ellipse2D.Double(30, 30, 80, 60));
        g.setStroke(new BasicStroke(6f));
        g.draw(new Rectangle2D.Double(130, 20, 60, 50));
        g.setComposite(AlphaComposite.SrcOver);
        g.translate(20, 5);
        g.clip(new Rectangle2D.Double(100, 60, 30, 30));
        g.setColor(Color.BLACK);
        g.fill(new Ellipse2D.Double(90, 50, 60, 60));
    }

    /** The judge is Apache Batik's renderer, which shares no code with Java's own. */
    @Test
    void whatIsWrittenLooksAsJavaDrawsIt() throws IOException, TranscoderException {
        BufferedImage wanted = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = wanted.createGraphics();
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, WIDTH, HEIGHT);
        shapes(g);
        g.dispose();
        BufferedImage seen = rendered(SHEET.draw(SvgSheetTest::shapes));
        double off = 0;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                off += Math.abs((wanted.getRGB(x, y) >> 8 & 255) - (seen.getRGB(x, y) >> 8 & 255));
            }
        }
        // A level on average; one shape missing or at full strength makes ten and more.
        assertThat(off / (WIDTH * HEIGHT)).isLessThan(1);
    }

    private static BufferedImage rendered(String svg) throws IOException, TranscoderException {
        PNGTranscoder to = new PNGTranscoder();
        to.addTranscodingHint(PNGTranscoder.KEY_BACKGROUND_COLOR, Color.WHITE);
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        to.transcode(new TranscoderInput(new StringReader(svg)), new TranscoderOutput(png));
        return ImageIO.read(new ByteArrayInputStream(png.toByteArray()));
    }

    @Test
    void eachElementStatesWhatItNeedsAndNoMore() {
        String svg = SHEET.draw(g -> {
            g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 13));
            g.setColor(Palette.INK.light());
            g.drawString("Butt < 90°", 10, 20);
            g.setColor(Palette.BLANK.light());
            g.draw(new Line2D.Double(0, 0, 10, 10));
        });
        assertThat(svg)
                .contains("<text fill=\"rgb(28,43,46)\" font-weight=\"bold\" x=\"10\" y=\"20\">Butt &lt; 90°</text>")
                .contains(
                        "<line stroke=\"rgb(166,61,16)\" stroke-linecap=\"square\" x1=\"0\" x2=\"10\" y1=\"0\" y2=\"10\"/>")
                .contains("<title id=\"sheet-title\">Pull &amp; &lt;bend&gt;</title>")
                .doesNotContain("<g", "<!--", "<defs");
    }

    @Test
    void onPaperWordsAreTextOfThePageAndNotOfTheDrawing() {
        String page = PaperChart.of(SHEET.draw(g -> {
            g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 13));
            g.setColor(Palette.INK.light());
            g.drawString("clip time, s", 10, 100);
        }));
        // The sheet of 240 becomes 688 wide, so all is 2.867 times as large.
        assertThat(page)
                .contains("left:28.7px;")
                .contains("font-size:37.27px;color:rgb(28,43,46)\">clip time, s</span>")
                .doesNotContain("<text");
    }
}
