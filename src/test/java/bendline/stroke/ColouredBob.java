package bendline.stroke;

import bendline.benchmark.SharedFolder;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Picture;
import bendline.footage.PictureReader;
import bendline.footage.SlowMotion;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntPredicate;

/**
 * The bob of a real pendulum or the ball of a real fall, followed by its colour, as it fills more of the picture than a rig and
 * never leaves the background free. Each clip is decoded once for all tests.
 *
 * @param info the clip
 * @param places where the bob is, in order
 */
public record ColouredBob(ClipInfo info, List<Place> places) {

    /**
     * 68 % of the places lie within this of the bob's: blur, a colour's limit that is not sharp, and uneven frame times leave about
     * 1 pixel each way about the fall's path.
     */
    private static final double SD_PX = 1.5;

    /** First frame in which the falling ball is looked for: it is still held, and falls from frame 118. */
    public static final int FALL_FROM = 105;

    /** Last frame before it touches the floor. */
    private static final int FALL_TO = 200;

    /**
     * Where the pixels of a colour are.
     *
     * @param seconds clip time
     * @param x mean, pixels
     * @param y mean, pixels
     */
    public record Place(double seconds, double x, double y) {

        /** Without its time. */
        public Point point() {
            return new Point(x, y);
        }
    }

    private static final Map<String, ColouredBob> FOLLOWED = new ConcurrentHashMap<>();

    /** The lower half of a bob on a rope of 0.25 m, whole clip; the test that asks is skipped where the clip is absent. */
    public static ColouredBob pendulum() {
        return FOLLOWED.computeIfAbsent(
                "clips/pendulum-0.25m.mp4",
                clip -> of(SharedFolder.need(clip), 0, Integer.MAX_VALUE, c -> blue(c) > red(c) + 10));
    }

    /** A ball that is held and falls 2.28 m, slow motion, until it touches the floor; skipped where the clip is absent. */
    public static ColouredBob fall() {
        return FOLLOWED.computeIfAbsent(
                "clips/fall-slow-motion.mp4",
                clip -> of(
                        SharedFolder.need(clip),
                        FALL_FROM,
                        FALL_TO,
                        c -> red(c) - green(c) > 60 && red(c) - blue(c) > 55));
    }

    private static ColouredBob of(Path clip, int from, int to, IntPredicate colour) {
        Footage footage = Footage.open(clip);
        ClipInfo info = footage.survey(f -> {});
        List<Place> out = new ArrayList<>();
        try (PictureReader reader = footage.pictures()) {
            for (Picture p = reader.next(); p != null && p.index() <= to; p = reader.next()) {
                if (p.index() >= from) {
                    out.add(place(p.image(), p.seconds(), colour));
                }
            }
        }
        return new ColouredBob(info, List.copyOf(out));
    }

    private static Place place(BufferedImage image, double seconds, IntPredicate colour) {
        double x = 0;
        double y = 0;
        int n = 0;
        for (int row = 0; row < image.getHeight(); row++) {
            for (int column = 0; column < image.getWidth(); column++) {
                if (colour.test(image.getRGB(column, row))) {
                    x += column + 0.5;
                    y += row + 0.5;
                    n++;
                }
            }
        }
        return new Place(seconds, x / n, y / n);
    }

    private static int red(int rgb) {
        return rgb >> 16 & 0xff;
    }

    private static int green(int rgb) {
        return rgb >> 8 & 0xff;
    }

    private static int blue(int rgb) {
        return rgb & 0xff;
    }

    /** The same motion played so many times slower, as an export would store it. */
    public ColouredBob played(double timesSlower, SlowMotion taken) {
        ClipInfo other = new ClipInfo(
                info.width(),
                info.height(),
                info.frames(),
                info.durationSeconds() * timesSlower,
                info.rotationDegrees(),
                info.mirrored(),
                taken,
                info.times().stream().map(t -> t * timesSlower).toList(),
                List.of());
        List<Place> moved = places.stream()
                .map(p -> new Place(p.seconds() * timesSlower, p.x(), p.y()))
                .toList();
        return new ColouredBob(other, moved);
    }

    /** The same clip of which only some of the places are looked at. */
    public ColouredBob seen(List<Place> some) {
        return new ColouredBob(info, some);
    }

    /** A trace in which the bob is the rig of a straight rod that never moves. */
    public Trace asRig(Point grip, Point tip) {
        List<FrameTrace> frames = new ArrayList<>();
        Polyline blank = new Polyline(List.of(grip, grip.plus(tip).times(0.5), tip));
        for (Place p : places) {
            frames.add(new FrameTrace(
                    frames.size(),
                    p.seconds(),
                    Tracked.seen(grip, 1),
                    Tracked.seen(tip, 1),
                    Tracked.seen(p.point(), SD_PX),
                    blank,
                    0.01));
        }
        CameraMotion still = new CameraMotion(Collections.nCopies(frames.size(), Homography.IDENTITY), 0, true);
        return new Trace(info.width(), info.height(), frames, still, blank.length(), 1, null);
    }
}
