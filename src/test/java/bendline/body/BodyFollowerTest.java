package bendline.body;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.Footage;
import bendline.footage.LumaReader;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import bendline.simulate.Truth;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** On a sample clip, whose drawn angler has joints that are known exactly. */
class BodyFollowerTest {

    private static final Path CLIP = Path.of("samples/tip-dropped-early.mp4");

    /** Up to the release; in every eighth frame. */
    private static final int FRAMES = 232;

    private static final int STEP = 8;

    private static Footage footage;
    private static Truth truth;
    private static CameraMotion still;

    @BeforeAll
    static void readTheSample() throws IOException {
        footage = Footage.open(CLIP);
        truth = Truth.read(Path.of("samples/tip-dropped-early.truth.json"));
        List<Homography> maps = new ArrayList<>();
        truth.frames().forEach(f -> maps.add(Homography.IDENTITY));
        still = new CameraMotion(maps, 0, true);
    }

    private static List<HeldRod> rods(Point shift) {
        List<HeldRod> out = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            Truth.Frame f = truth.frames().get(i);
            Point d = f.blank().get(0).minus(f.grip());
            out.add(new HeldRod(i, f.grip().plus(shift), d.times(1 / d.norm())));
        }
        return out;
    }

    private static double freePx() {
        Truth.Frame f = truth.frames().get(0);
        return f.grip().distance(f.tip());
    }

    private static BodyTrace follow(Point shift) {
        TreeSet<Integer> frames = new TreeSet<>();
        for (int i = 0; i < FRAMES; i += STEP) {
            frames.add(i);
        }
        return new BodyFollower(footage, still, rods(shift), freePx()).follow(frames, done -> {});
    }

    /** 5 % of the height is what is asked for on filmed people; a drawn one is no easier to the networks. */
    @Test
    void jointsOfTheDrawnAnglerLieWithinAFewHundredthsOfItsHeight() {
        BodyTrace body = follow(new Point(0, 0));
        assertThat(body.trouble()).isNull();
        assertThat(body.sights()).hasSize(FRAMES / STEP);
        List<Double> off = new ArrayList<>();
        for (BodySight s : body.sights()) {
            Truth.Frame f = truth.frames().get(s.frame());
            double height = f.pxPerMetreGrip() * truth.scenario().statureM();
            for (Joint j : Joint.values()) {
                off.add(s.joint(j).place().distance(f.joints().get(j.id())) / height);
            }
            assertThat(body.heightPx()).isBetween(0.85 * height, 1.15 * height);
        }
        off.sort(null);
        assertThat(off.get(off.size() / 2)).isLessThan(0.05);
    }

    /** In a cast to the right the drawn angler's right side is near the camera and has the upper hand. */
    @Test
    void theUpperHandAndTheWayBetweenTheHandsAreTold() {
        RodHold hold = follow(new Point(0, 0)).hands();
        assertThat(hold.upper()).isEqualTo(Joint.RIGHT_WRIST);
        Truth.Frame f = truth.frames().get(0);
        double apart = f.joints().get("rightWrist").distance(f.joints().get("leftWrist"));
        assertThat(hold.apartPx()).isBetween(0.8 * apart, 1.2 * apart);
    }

    @Test
    void whoeverStandsBesideARodThatIsHeldElsewhereIsNotItsCaster() {
        BodyTrace body = follow(new Point(-1.2 * freePx(), 0));
        assertThat(body.sights()).isEmpty();
        assertThat(body.trouble()).contains("hold the rod");
    }

    @Test
    void withoutARodNobodyIsFollowed() {
        BodyTrace body = new BodyFollower(footage, still, List.of(), 100).follow(new TreeSet<>(List.of(0)), d -> {});
        assertThat(body.trouble()).contains("not known who holds it");
    }

    @Test
    void facesAreFoundAndTheirPatchCoversTheHead() {
        try (PersonFinder people = new PersonFinder(0.4);
                LumaReader reader = footage.tinted()) {
            List<Faces.Spot> spots = FaceFinder.spots(people, reader.next());
            Truth.Frame f = truth.frames().get(0);
            double height = f.pxPerMetreGrip() * truth.scenario().statureM();
            Point nose = f.joints().get("nose");
            // The head is 0.13 of the height tall, so half of it from the nose reaches chin and crown.
            assertThat(spots).anyMatch(s -> s.centre().distance(nose) + 0.05 * height < s.radius());
            assertThat(spots).allMatch(s -> s.radius() < 0.3 * height);
        }
    }
}
