package bendline.report;

import bendline.body.Faces;
import bendline.compare.Comparison;
import bendline.compare.Difference;
import bendline.compare.Family;
import bendline.geometry.Point;
import bendline.scene.Setup.Side;
import bendline.stroke.EventKind;
import java.awt.geom.AffineTransform;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The cast of a set that is shown in pictures: the one nearest to the set's middle in the measures that were compared, among
 * those whose release is known.
 *
 * @param cast which
 * @param release clip time of the release
 * @param freePx hand to tip along the blank, pixels of its picture
 * @param grip where the hand is at the release, pixels
 * @param veil over faces in its film
 */
record SetPictures(ReadCast cast, double release, double freePx, Point grip, FaceVeil veil) {

    /** What of the plane of the cast is shown, in free lengths from the hand at the release. */
    private static final double BEHIND = 1.3;

    private static final double ABOVE = 1.2;

    /** Width and height of that, in free lengths. */
    static final double WIDE = 2.6;

    static final double HIGH = 1.95;

    /** Chooses from a set; nothing where no release is known in it. */
    static Optional<SetPictures> of(List<ReadCast> set, Comparison comparison, boolean second) {
        return set.stream()
                .filter(c -> Double.isFinite(c.seconds(EventKind.RELEASE)))
                .filter(c -> c.track().freeLengthPx() > 0)
                .min(Comparator.comparingDouble(c -> strangeness(c, comparison, second)))
                .map(SetPictures::of);
    }

    private static SetPictures of(ReadCast c) {
        double release = c.seconds(EventKind.RELEASE);
        Point grip = c.track().gripNear(release);
        return new SetPictures(
                c,
                release,
                c.track().freeLengthPx(),
                grip == null ? new Point(0, 0) : grip,
                new FaceVeil(new Faces(List.of())));
    }

    /** The same with the faces of its film covered. */
    SetPictures veiled(Faces faces) {
        return new SetPictures(cast, release, freePx, grip, new FaceVeil(faces));
    }

    /** Mean distance from the set's median, in steps. */
    private static double strangeness(ReadCast c, Comparison comparison, boolean second) {
        double sum = 0;
        int n = 0;
        for (Difference d : comparison.family()) {
            double[] values = (second ? d.b() : d.a())
                    .stream().mapToDouble(r -> r.value()).sorted().toArray();
            double step = Family.step(d.id(), d.unit());
            Optional<Double> own = c.measures().stream()
                    .filter(m -> m.id().equals(d.id()) && m.value() != null)
                    .map(m -> m.value())
                    .findFirst();
            if (own.isPresent() && step > 0) {
                sum += Math.abs(own.get() - values[values.length / 2]) / step;
                n++;
            }
        }
        return n == 0 ? Double.MAX_VALUE : sum / n;
    }

    /** The clip with everything drawn in. */
    Path film() {
        return cast.folder().resolve("marked.mp4");
    }

    /** Whether it is there. */
    boolean filmed() {
        return Files.isRegularFile(film());
    }

    /** Clip time at so many seconds of real time after the release. */
    double clipSeconds(double afterRelease) {
        return release + afterRelease * cast.picture().slowMotionFactor();
    }

    /** Real time after the release of a clip time. */
    double afterRelease(double clipSeconds) {
        return (clipSeconds - release) / cast.picture().slowMotionFactor();
    }

    /** From the clip's pixels to a panel on which the water is to the right and rods are equally long. */
    AffineTransform toPanel(int width) {
        double scale = width / (WIDE * freePx);
        AffineTransform out = AffineTransform.getScaleInstance(scale, scale);
        if (cast.castsTo() == Side.RIGHT) {
            out.translate(BEHIND * freePx - grip.x(), ABOVE * freePx - grip.y());
        } else {
            out.translate(BEHIND * freePx + grip.x(), ABOVE * freePx - grip.y());
            out.scale(-1, 1);
        }
        return out;
    }

    /** Height of a panel of that width. */
    static int height(int width) {
        return (int) Math.round(width * HIGH / WIDE) / 2 * 2;
    }
}
