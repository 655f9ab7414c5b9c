package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup.Side;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which places of a rig, a hundred pixels below the tip, count as on its line; places are written down. */
class RigPathTest {

    private static final double REACH = 112;

    /** Frames in which the tip is seen or not, and the rig so far below it or not at all (NaN). */
    private static boolean[] onItsLine(boolean[] tipSeen, double... below) {
        NoisyTrace trace = new NoisyTrace(1920, 1080, 0, 0, 3);
        for (int i = 0; i < below.length; i++) {
            Polyline blank = new Polyline(List.of(new Point(600, 700), new Point(700, 500), new Point(800, 300)));
            Point rig = Double.isNaN(below[i]) ? null : blank.last().plus(new Point(0, below[i]));
            trace.add(i / 60.0, blank, tipSeen[i], rig, 1);
        }
        return RigPath.onItsLine(RodSeries.of(trace.trace(), new SlowMotion(1, "as filmed"), Side.RIGHT), REACH);
    }

    private static boolean[] tips(int frames, int hiddenFrom, int hiddenTo) {
        boolean[] out = new boolean[frames];
        IntStream.range(0, frames).forEach(i -> out[i] = i < hiddenFrom || i >= hiddenTo);
        return out;
    }

    @Test
    void aRigSeenAllTheWayFromWhereTheTipWasSeenCountsWithoutIt() {
        assertThat(onItsLine(tips(6, 2, 5), 100, 100, 100, 100, 100, 100)).containsOnly(true);
    }

    @Test
    void aPlaceAfterAGapWithoutATipToHangFromDoesNotCount() {
        double gone = Double.NaN;
        assertThat(onItsLine(tips(8, 2, 6), 100, 100, gone, 40, 60, gone, 100, 100))
                .containsExactly(true, true, false, false, false, false, true, true);
    }

    @Test
    void aPlaceBeyondTheLineDoesNotCountNorDoesItSpeakForItsNeighbours() {
        assertThat(onItsLine(tips(5, 2, 4), 100, 130, 100, 100, 130)).containsExactly(true, false, false, false, false);
    }
}
