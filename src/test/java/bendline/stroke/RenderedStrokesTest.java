package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Casts rendered by another simulator, whose truth has been turned into traces with 0.7 px of error and some frames lost: the
 * design's targets for moments (median error half a frame, 95 % within 1.5 frames, release within one frame).
 */
class RenderedStrokesTest {

    private static final double SD_PX = 0.7;
    private static final double DROPPED = 0.03;

    private record Timed(RenderedTruth truth, List<Stroke> strokes) {}

    private static List<Timed> timed;

    @BeforeAll
    static void timeAll() {
        timed = new ArrayList<>();
        for (RenderedTruth truth : RenderedTruth.all()) {
            Double free = truth.casts() > 0 ? truth.freeLengthM() : null;
            Setup setup = new Setup(null, free, null, null, null, null, List.of());
            double factor = truth.root().path("video").path("time_scale").asDouble(1);
            timed.add(new Timed(
                    truth,
                    new StrokeTimer().time(truth.trace(SD_PX, DROPPED, 1), setup, new SlowMotion(factor, "given"))));
        }
    }

    @Test
    void castsAreCountedRight() {
        assertThat(timed)
                .allSatisfy(t -> assertThat(t.strokes())
                        .as(t.truth().name())
                        .hasSize(t.truth().casts()));
    }

    @Test
    void momentsMeetTheTargets() {
        List<Double> all = new ArrayList<>();
        for (Timed t : timed) {
            for (Stroke s : t.strokes()) {
                for (EventKind k : EventKind.values()) {
                    double truth = t.truth().event(k);
                    if (k != EventKind.TIP_LOWEST && !Double.isNaN(truth)) {
                        all.add(Math.abs(frames(t, s, k)));
                    }
                }
            }
        }
        all.sort(null);
        assertThat(all.get(all.size() / 2)).as("median, frames").isLessThanOrEqualTo(0.5);
        assertThat(all.get((int) (0.95 * (all.size() - 1)))).as("95 %, frames").isLessThanOrEqualTo(1.5);
    }

    @Test
    void releaseIsRightToAFrame() {
        for (Timed t : timed) {
            for (Stroke s : t.strokes()) {
                assertThat(Math.abs(frames(t, s, EventKind.RELEASE)))
                        .as(t.truth().name())
                        .isLessThanOrEqualTo(1);
            }
        }
    }

    /**
     * These traces err independently from frame to frame and have no strays; what is stated is fitted to the tracker's errors, which
     * drift and stray, so that here it holds the truth more often than in 68 %. Far too wide is still a failure.
     */
    @Test
    void statedUncertaintiesAreNotSmugOnTracesThatErrLittle() {
        int inside = 0;
        int all = 0;
        for (Timed t : timed) {
            for (Stroke s : t.strokes()) {
                for (EventKind k : EventKind.values()) {
                    if (k != EventKind.TIP_LOWEST && !Double.isNaN(t.truth().event(k))) {
                        double stated =
                                s.event(k).plusMinusSeconds() * t.truth().framesPerSecond();
                        inside += Math.abs(frames(t, s, k)) <= stated ? 1 : 0;
                        all++;
                    }
                }
            }
        }
        assertThat((double) inside / all).isBetween(0.6, 0.97);
    }

    @Test
    void aDroppedRodsLowestPointIsSeen() {
        for (Timed t : timed) {
            for (Stroke s : t.strokes()) {
                boolean dropped = !t.truth().fault("tip_drop").equals("none");
                if (dropped) {
                    double stated = s.event(EventKind.TIP_LOWEST).plusMinusSeconds()
                            * t.truth().framesPerSecond();
                    assertThat(Math.abs(frames(t, s, EventKind.TIP_LOWEST)))
                            .as(t.truth().name())
                            .isLessThan(Math.max(3, 2.5 * stated));
                }
            }
        }
    }

    /** Deepest bend in the plane of the cast, from the truth's world positions. */
    @Test
    void compressionIsRightToThePromise() {
        for (Timed t : timed) {
            for (Stroke s : t.strokes()) {
                double truth = t.truth().deepestCompression();
                assertThat(s.measure("compression").value())
                        .as(t.truth().name())
                        .isNotNull();
                assertThat(Math.abs(s.measure("compression").value() - truth))
                        .as(t.truth().name())
                        .isLessThan(0.015);
            }
        }
    }

    private static double frames(Timed t, Stroke s, EventKind k) {
        Double seconds = s.event(k).seconds();
        assertThat(seconds)
                .as(t.truth().name() + " " + k.id() + ": " + s.event(k).basis())
                .isNotNull();
        return (seconds - t.truth().event(k)) * t.truth().framesPerSecond();
    }
}
