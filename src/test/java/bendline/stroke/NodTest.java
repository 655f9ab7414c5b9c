package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.simulate.Presets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pull of a line that comes tight on its clip, in a tip that still rings, with the tracker's errors of a pixel. */
class NodTest {

    private static SimulatedCasts.Read read(String preset) {
        return SimulatedCasts.read(Presets.named(preset), null, 1, 0.1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"clip-firm", "clip-soft"})
    void aPullIsFoundAndDatedFromWhereItBegins(String preset) {
        SimulatedCasts.Read cast = read(preset);
        Event nod = cast.strokes().get(0).event(EventKind.CLIP_NOD);
        double truth = cast.truth().casts().get(0).events().get("clipNod");
        assertThat(nod.seconds()).isNotNull();
        assertThat(nod.seconds()).isCloseTo(truth, within(0.04));
        assertThat(nod.seconds()).isCloseTo(truth, within(3 * nod.plusMinusSeconds()));
        assertThat(nod.plusMinusSeconds()).isLessThan(0.03);
    }

    @Test
    void aRigThatLandsAndARodThatIsLoweredAreNoPull() {
        Event nod = read("clip-none").strokes().get(0).event(EventKind.CLIP_NOD);
        assertThat(nod.seconds()).isNull();
        assertThat(nod.basis()).contains("was not seen to be pulled");
    }
}
