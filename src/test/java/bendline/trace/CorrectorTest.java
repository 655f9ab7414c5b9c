package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.ClipInfo;
import bendline.footage.SlowMotion;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.scene.CameraMotion;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A blank that turns at an even rate and was followed wrongly for a while, put right from one mark. */
class CorrectorTest {

    private static final int FRAMES = 60;
    private static final int WRONG_FROM = 20;
    private static final int WRONG_TO = 40;
    private static final int MARKED = 30;
    private static final int SIZE = 420;
    private static final double LENGTH = 260;
    private static final Point HAND = new Point(200, 330);
    private static final RodLength.Estimate ROD = new RodLength.Estimate(LENGTH, 3, 1);

    private static List<Plane> planes;
    private static List<Look> looks;

    @BeforeAll
    static void film() {
        planes = IntStream.range(0, FRAMES).mapToObj(t -> drawn(blank(t), t)).toList();
        looks = IntStream.range(0, FRAMES)
                .mapToObj(t -> new Look(t / 30.0, List.of(), fit(followed(t))))
                .toList();
    }

    /** From hand to tip, bent a little, 1.2 degrees further a frame. */
    private static Polyline blank(int t) {
        List<Point> points = new ArrayList<>();
        double angle = Math.toRadians(50 + 1.2 * t);
        double x = HAND.x();
        double y = HAND.y();
        for (int i = 0; i <= 50; i++) {
            points.add(new Point(x, y));
            double a = angle + 0.3 * i / 50.0 * i / 50.0;
            x += LENGTH / 50 * Math.cos(a);
            y -= LENGTH / 50 * Math.sin(a);
        }
        return new Polyline(points);
    }

    /** What was followed: for a while a branch that stands still. */
    private static Polyline followed(int t) {
        return blank(t > WRONG_FROM && t < WRONG_TO ? WRONG_FROM - 14 : t);
    }

    private static Fit fit(Polyline line) {
        return new Fit(line.reversed().cut(0.9 * LENGTH).reversed(), 0.5, 1, 0.01, 3, 100, 0.95, 0);
    }

    /** A ridge of twelve times the noise. */
    private static Plane drawn(Polyline line, int seed) {
        Random random = new Random(seed);
        float[] v = new float[SIZE * SIZE];
        for (int i = 0; i < v.length; i++) {
            v[i] = (float) random.nextGaussian();
        }
        for (double s = 0; s < line.length(); s += 0.5) {
            Point p = line.at(s);
            for (int y = (int) p.y() - 4; y <= p.y() + 4; y++) {
                for (int x = (int) p.x() - 4; x <= p.x() + 4; x++) {
                    double d = new Point(x + 0.5, y + 0.5).distance(p);
                    v[y * SIZE + x] = (float) Math.max(v[y * SIZE + x], 12 * Math.exp(-d * d / 4));
                }
            }
        }
        return new Plane(SIZE, SIZE, v);
    }

    private static Corrector corrector() {
        return new Corrector(planes::get, new BlankFitter(SIZE, HAND, LENGTH), ROD);
    }

    private static Pin pin(int frame, Point grip, Point tip) {
        return new Pin(frame, grip, tip, null, new Mark(frame / 30.0, grip, tip));
    }

    @Test
    void theMarkedFrameRunsThroughTheMarkToThePixel() {
        Point tip = blank(MARKED).last().plus(new Point(1.25, -0.5));
        List<Look> out = corrector().corrected(looks, Map.of(MARKED, pin(MARKED, null, tip)));
        assertThat(out.get(MARKED).chosen().line().last().distance(tip)).isLessThan(1e-9);
    }

    @Test
    void theFramesOnBothSidesFollowFromThere() {
        Pin pin = pin(MARKED, HAND, blank(MARKED).last());
        List<Look> out = corrector().corrected(looks, Map.of(MARKED, pin));
        for (int t = WRONG_FROM + 1; t < WRONG_TO; t++) {
            Fit fit = out.get(t).chosen();
            assertThat(fit).as("frame " + t).isNotNull();
            assertThat(fit.line().last().distance(blank(t).last()))
                    .as("tip in frame " + t + ", pixels; " + fit.alongSdPx() + " stated along the blank")
                    .isLessThan(3 + 2 * fit.alongSdPx());
            assertThat(blank(t).distanceTo(fit.line().at(fit.line().length() / 2)))
                    .as("middle in frame " + t)
                    .isLessThan(1.5);
        }
    }

    @Test
    void whatWasRightStaysAsItWas() {
        Pin pin = pin(MARKED, HAND, blank(MARKED).last());
        List<Look> out = corrector().corrected(looks, Map.of(MARKED, pin));
        for (int t : new int[] {0, WRONG_FROM - 3, WRONG_TO + 3, FRAMES - 1}) {
            assertThat(out.get(t)).as("frame " + t).isSameAs(looks.get(t));
        }
    }

    @Test
    void aMarkOnAFrameThatWasRightChangesNoOther() {
        Pin pin = pin(5, null, blank(5).last());
        List<Look> out = corrector().corrected(looks, Map.of(5, pin));
        for (int t = 0; t < FRAMES; t++) {
            if (t != 5) {
                assertThat(out.get(t)).as("frame " + t).isSameAs(looks.get(t));
            }
        }
    }

    @Test
    void whereThePictureShowsNothingAtTheMarkNothingIsSaid() {
        Point astray = blank(MARKED).last().plus(new Point(-90, 60));
        List<Look> out = corrector().corrected(looks, Map.of(MARKED, pin(MARKED, null, astray)));
        assertThat(out.get(MARKED).chosen().line().last().distance(astray)).isLessThan(1e-9);
        assertThat(out.get(MARKED + 2).chosen()).isNull();
    }

    @Test
    void aLineIsTurnedAndStretchedBetweenTwoPoints() {
        Polyline line = new Polyline(List.of(new Point(0, 0), new Point(1, 1), new Point(2, 0)));
        Polyline moved = Corrector.between(line, new Point(10, 10), new Point(10, 14));
        assertThat(moved.points().get(1).distance(new Point(8, 12))).isLessThan(1e-12);
        assertThat(moved.last().distance(new Point(10, 14))).isLessThan(1e-12);
    }

    /** What is hidden is not seen, with the reason; what is marked is seen there; marks on one frame count together. */
    @Test
    void marksAreObeyedWordForWord() {
        ClipInfo info = new ClipInfo(
                SIZE,
                SIZE,
                FRAMES,
                FRAMES / 30.0,
                0,
                false,
                new SlowMotion(1, "given"),
                IntStream.range(0, FRAMES).mapToObj(t -> t / 30.0).toList(),
                List.of());
        CameraMotion still = new CameraMotion(Collections.nCopies(FRAMES, Homography.IDENTITY), 0, false);
        RigFinder rigs = new RigFinder(LENGTH, Double.NaN);
        IntStream.range(0, FRAMES)
                .forEach(t -> rigs.add(rigs.things(planes.get(t), looks.get(t).chosen())));
        Point rig = new Point(300.5, 200.25);
        try (DifferenceStore store = new DifferenceStore()) {
            IntStream.range(0, FRAMES).forEach(t -> store.put(t, planes.get(t)));
            Followed followed = new Followed(
                    info,
                    still,
                    looks,
                    looks,
                    java.util.Map.of(),
                    rigs,
                    ROD,
                    Paint.UNKNOWN,
                    HAND,
                    new Point(0, 0),
                    store,
                    null);
            Trace trace = followed.trace(List.of(
                    new Mark(MARKED / 30.0, HAND, null),
                    new Mark(MARKED / 30.0, null, blank(MARKED).last()),
                    new Mark(10 / 30.0, Map.of(Part.RIG, rig), Set.of()),
                    new Mark(11 / 30.0, Map.of(), Set.of(Part.TIP, Part.RIG))));
            assertThat(trace.frames().get(MARKED).grip().position()).isEqualTo(HAND);
            assertThat(trace.frames().get(MARKED).tip().position())
                    .isEqualTo(blank(MARKED).last());
            assertThat(trace.frames().get(MARKED).tip().seen()).isTrue();
            assertThat(trace.frames().get(MARKED).acrossSdPx()).isEqualTo(Pin.SD_PX);
            assertThat(trace.frames().get(10).rig()).isEqualTo(Tracked.seen(rig, Pin.SD_PX));
            assertThat(trace.frames().get(11).tip().seen()).isFalse();
            assertThat(trace.frames().get(11).tip().reason()).isEqualTo("you marked it as hidden");
            assertThat(trace.frames().get(11).rig().seen()).isFalse();
            assertThat(trace.frames().get(12).tip().seen()).isTrue();
        }
    }
}
