package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.ClipInfo;
import bendline.footage.SlowMotion;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.BlankFitter.Fit;
import java.util.List;
import org.junit.jupiter.api.Test;

class TraceBuilderTest {

    private static final int WIDTH = 1920;
    private static final int HEIGHT = 1080;
    private static final double FREE = 500;

    private static Tracked tip(Point from, Point to) {
        ClipInfo info =
                new ClipInfo(WIDTH, HEIGHT, 1, 0.02, 0, false, new SlowMotion(1, "real time"), List.of(0.0), List.of());
        CameraMotion still = new CameraMotion(List.of(Homography.IDENTITY), 0, true);
        Fit fit = new Fit(new Polyline(List.of(from, to)), 0.5, 1, 0.01, 3, 100, 1, 0);
        RodLength.Estimate length = new RodLength.Estimate(FREE, 0.03 * FREE, 1);
        return new TraceBuilder(info, still, length, new Point(0, 0))
                .build(List.of(new Look(0, List.of(), fit)), List.of(Tracked.notSeen(null, "no rig here")))
                .frames()
                .get(0)
                .tip();
    }

    @Test
    void aBlankThatRunsOutOfThePictureShowsNoTip() {
        Tracked tip = tip(new Point(900, 505), new Point(950, 5));
        assertThat(tip.seen()).isFalse();
        assertThat(tip.reason()).contains("out of the picture");
    }

    @Test
    void aTipNearTheEdgeIsSeenWhereTheBlankDoesNotLeadOut() {
        assertThat(tip(new Point(900, 540), new Point(950, 40)).seen()).isTrue();
        assertThat(tip(new Point(900, 5), new Point(1400, 5)).seen()).isTrue();
    }
}
