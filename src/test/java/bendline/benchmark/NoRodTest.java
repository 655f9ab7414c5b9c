package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.ClipInfo;
import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import bendline.footage.Footage;
import bendline.geometry.Point;
import bendline.scene.Mark;
import bendline.scene.Setup;
import bendline.stroke.StrokeTimer;
import bendline.trace.RodTracker;
import bendline.trace.Trace;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Clips in which there is no rod: the tracker says so, with a reason, and never throws. */
@Execution(ExecutionMode.CONCURRENT)
class NoRodTest {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 360;
    private static final int FRAMES = 50;

    @TempDir
    Path folder;

    /** What is in view. */
    private enum View {
        /** One grey from edge to edge. */
        GREY {
            @Override
            void paint(Graphics2D g, int frame, Random random) {}
        },
        /** A picture that stands still. */
        STILL {
            @Override
            void paint(Graphics2D g, int frame, Random random) {
                bars(g, 0);
            }
        },
        /** Coloured bars that move sideways. */
        BARS {
            @Override
            void paint(Graphics2D g, int frame, Random random) {
                bars(g, 3 * frame);
            }
        },
        /** Grains without memory. */
        NOISE {
            @Override
            void paint(Graphics2D g, int frame, Random random) {
                for (int i = 0; i < 6000; i++) {
                    g.setColor(new Color(random.nextInt(0x1000000)));
                    g.fillRect(random.nextInt(WIDTH), random.nextInt(HEIGHT), 3, 3);
                }
            }
        },
        /** A disc that swings to and fro before grains that stay. */
        DISC {
            @Override
            void paint(Graphics2D g, int frame, Random random) {
                NOISE.paint(g, 0, new Random(1));
                g.setColor(Color.WHITE);
                g.fillOval((int) (200 + 120 * Math.sin(frame / 8.0)), 150, 50, 50);
            }
        };

        abstract void paint(Graphics2D g, int frame, Random random);

        private static void bars(Graphics2D g, int shift) {
            for (int i = 0; i < 8; i++) {
                g.setColor(Color.getHSBColor(i / 8f, 0.8f, 0.9f));
                g.fillRect((i * 60 + shift) % WIDTH, 0, 60, HEIGHT);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = View.class,
            names = {"GREY", "STILL", "NOISE"})
    void aClipWithoutARodHasATroubleInsteadOfATrace(View view) throws IOException {
        Footage footage = written(view);
        ClipInfo info = footage.survey(f -> {});
        Trace trace = RodTracker.follow(footage, info, Setup.NONE, f -> {});
        assertThat(trace.trouble()).isNotBlank();
        assertThat(trace.frames()).hasSize(FRAMES);
        assertThat(trace.frames()).noneMatch(f -> f.tip().seen() || f.rig().seen() || f.blank() != null);
        assertThat(trace.motion().toReference()).hasSize(FRAMES);
    }

    @ParameterizedTest
    @EnumSource(View.class)
    void noCastIsReportedWithoutARod(View view) throws IOException {
        Footage footage = written(view);
        ClipInfo info = footage.survey(f -> {});
        Trace trace = RodTracker.follow(footage, info, Setup.NONE, f -> {});
        assertThat(new StrokeTimer().time(trace, Setup.NONE, info.slowMotion())).isEmpty();
    }

    @Test
    void aMarkWhereThereIsNoRodMakesNoCast() throws IOException {
        Footage footage = written(View.NOISE);
        ClipInfo info = footage.survey(f -> {});
        Mark mark = new Mark(0.2, new Point(100, 300), new Point(400, 60));
        Setup setup = new Setup(3.6, null, null, null, null, null, List.of(mark));
        Trace trace = RodTracker.follow(footage, info, setup, f -> {});
        assertThat(trace.frames()).hasSize(FRAMES);
        assertThat(new StrokeTimer().time(trace, setup, info.slowMotion())).isEmpty();
    }

    private Footage written(View view) throws IOException {
        Path file = folder.resolve(view + ".mp4");
        Random random = new Random(11);
        try (ClipWriter writer = new ClipWriter(file, WIDTH, HEIGHT, ClipWriterSettings.of(25, 3_000_000))) {
            for (int i = 0; i < FRAMES; i++) {
                BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
                Graphics2D g = image.createGraphics();
                g.setColor(Color.GRAY);
                g.fillRect(0, 0, WIDTH, HEIGHT);
                view.paint(g, i, random);
                g.dispose();
                writer.write(image, i / 25.0);
            }
        }
        return Footage.open(file);
    }
}
