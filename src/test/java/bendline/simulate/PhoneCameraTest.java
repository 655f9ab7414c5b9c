package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.List;
import org.junit.jupiter.api.Test;

class PhoneCameraTest {

    private static Scenario scenario(double yaw, boolean leftToRight, double shake) {
        CameraSpec c =
                new CameraSpec(1280, 720, 0, 60, 60, 0.002, 1000, 10, 1.5, yaw, 0.4, 2.6, 0.8, shake, 0, 0, 5_000_000);
        return new Scenario(
                "camera",
                3,
                2,
                leftToRight,
                true,
                1.8,
                Scenario.TipColour.PLAIN,
                RodSpec.medium(),
                RigSpec.feeder(85, 1.25),
                List.of(),
                c,
                SceneSpec.plain());
    }

    @Test
    void looksAtTheAim() {
        Point p = new PhoneCamera(scenario(15, false, 0)).plane(0.4, 2.6);
        assertThat(p.distance(new Point(640, 360))).isLessThan(1e-9);
    }

    /** Pinhole: a metre square to the view at 10 m and a focal length of 1000 px is 100 px. */
    @Test
    void hasTheScaleOfAPinhole() {
        assertThat(new PhoneCamera(scenario(0, true, 0)).pxPerMetre(0.4, 2.6)).isEqualTo(100, within(1e-9));
    }

    @Test
    void aCastToTheLeftIsTheMirrorImage() {
        CameraSpec flat = scenario(0, true, 0).camera();
        assertThat(flat.rollDeg()).isNotZero();
        Point right = new PhoneCamera(scenario(0, true, 0)).plane(3, 2.6);
        Point left = new PhoneCamera(scenario(0, false, 0)).plane(3, 2.6);
        assertThat(right.x()).isGreaterThan(800);
        assertThat(left.x()).isLessThan(480);
    }

    @Test
    void theGroundUnderAPixelIsSeenAtThatPixel() {
        PhoneCamera camera = new PhoneCamera(scenario(12, true, 0));
        double[] at = camera.ground(300, 700, 0);
        Point back = camera.scene(at[0], 0, at[1]);
        assertThat(back.distance(new Point(300, 700))).isLessThan(1e-6);
        assertThat(camera.ground(300, camera.horizon(300) - 1, 0)).isNull();
    }

    @Test
    void theShakingCameraStartsStillAndTurnsAboutItsCentre() {
        Scenario s = scenario(0, true, 1.5);
        HandShake shake = new HandShake(s.camera(), 9);
        Point corner = new Point(100, 50);
        assertThat(shake.stillToPicture(0).apply(corner).distance(corner)).isLessThan(1e-9);
        Homography map = shake.stillToPicture(1.3);
        // A pure turn K·R·K⁻¹ keeps the angle between two rays.
        double before = angle(s.camera(), corner, new Point(900, 600));
        double after = angle(s.camera(), map.apply(corner), map.apply(new Point(900, 600)));
        assertThat(after).isEqualTo(before, within(1e-9));
        assertThat(map.apply(corner).distance(corner)).isBetween(0.1, shake.largestShift(2) + 1e-9);
    }

    private static double angle(CameraSpec c, Point a, Point b) {
        double[] u = {a.x() - c.width() / 2.0, a.y() - c.height() / 2.0, c.focalPx()};
        double[] v = {b.x() - c.width() / 2.0, b.y() - c.height() / 2.0, c.focalPx()};
        double dot = u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
        return Math.acos(dot / Math.sqrt(norm2(u) * norm2(v)));
    }

    private static double norm2(double[] v) {
        return v[0] * v[0] + v[1] * v[1] + v[2] * v[2];
    }
}
