package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Where a line turns from darker than what lies behind it to brighter. */
class TurnoverTest {

    private static final int TURN = 170;

    private static final int END = 190;

    /** Strengths in noise of one unit: of the blank, of what begins at its paint, and of nothing beyond the end. */
    private static double[] line(double blank, double beyond, int end) {
        Random noise = new Random(5);
        double[] out = new double[240];
        for (int i = 0; i < out.length; i++) {
            out[i] = (i < TURN ? blank : i < end ? beyond : 0) + noise.nextGaussian();
        }
        return out;
    }

    @Test
    void lightPaintOnADarkBlankBeginsWhereTheSignTurns() {
        assertThat(Turnover.station(line(-20, 8, END), END)).isCloseTo(TURN, within(1));
        assertThat(Turnover.station(line(9, -15, END), END)).isCloseTo(TURN, within(1));
    }

    @Test
    void ofPaintThatIsHalfHiddenTheBeginningIsSeen() {
        assertThat(Turnover.station(line(-20, 8, TURN + 8), TURN + 8)).isCloseTo(TURN, within(1));
    }

    @Test
    void whatOnlyFadesOrEndsDoesNotTurn() {
        assertThat(Turnover.station(line(-20, -4, END), END)).isEqualTo(-1);
        assertThat(Turnover.station(line(-20, 0, END), TURN)).isEqualTo(-1);
        assertThat(Turnover.station(line(-20, 12, TURN + 2), TURN)).isEqualTo(-1);
        assertThat(Turnover.station(line(0, 0, END), END)).isEqualTo(-1);
    }
}
