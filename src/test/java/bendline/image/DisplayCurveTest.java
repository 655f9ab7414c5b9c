package bendline.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Levels from ITU-R BT.2408 (table of nominal levels), formulas from BT.2100: values from memory of both. */
class DisplayCurveTest {

    private static short[] grey(double signal, int pixels) {
        short[] rgb = new short[3 * pixels];
        Arrays.fill(rgb, (short) Math.round(signal * 65_535));
        return rgb;
    }

    private static int shown(DisplayCurve curve, double signal, double exposure) {
        byte[] bgr = new byte[3];
        curve.toBgr(grey(signal, 1), exposure, bgr);
        // Four-digit matrices leave grey a hair off grey.
        assertThat(bgr[0] & 255).isCloseTo(bgr[1] & 255, within(1));
        assertThat(bgr[2] & 255).isCloseTo(bgr[1] & 255, within(1));
        return bgr[1] & 255;
    }

    @Test
    void knownSignalsGiveTheirLight() {
        assertThat(DisplayCurve.HLG.light(0.5)).isCloseTo(1.0 / 12, within(1e-6));
        assertThat(DisplayCurve.HLG.light(1)).isCloseTo(1, within(1e-4));
        // HLG reference white, 75 %, is 203 cd/m² on a screen of 1000.
        double light = DisplayCurve.HLG.light(0.75);
        assertThat(light * DisplayCurve.HLG.screenGain(light) * 203).isCloseTo(203, within(2.0));
        // PQ reference white, 58 %, is 203 cd/m²; the full signal is 10 000.
        assertThat(DisplayCurve.PQ.light(0.58) * 10_000).isCloseTo(203, within(3.0));
        assertThat(DisplayCurve.PQ.light(1) * 10_000).isCloseTo(10_000, within(1e-6));
    }

    @Test
    void bothCurvesShowReferenceWhiteAlike() {
        assertThat(shown(DisplayCurve.HLG, 0.75, 1)).isCloseTo(shown(DisplayCurve.PQ, 0.58, 1), within(2));
        assertThat(shown(DisplayCurve.HLG, 0.75, 1)).isBetween(235, 254);
    }

    @Test
    void blackStaysBlackAndBrighterStaysBrighter() {
        for (DisplayCurve curve : DisplayCurve.values()) {
            assertThat(shown(curve, 0, 1)).isZero();
            int before = 0;
            for (double signal = 0; signal <= 1; signal += 1 / 64.0) {
                assertThat(shown(curve, signal, 1)).isGreaterThanOrEqualTo(before);
                before = shown(curve, signal, 1);
            }
            assertThat(before).isGreaterThanOrEqualTo(254);
        }
    }

    @Test
    void ordinaryGreyInWideColourIsUnchangedBelowTheKnee() {
        for (int code = 0; code <= 230; code += 10) {
            assertThat(shown(DisplayCurve.WIDE, code / 255.0, 1)).isCloseTo(code, within(1));
        }
    }

    @Test
    void onlyBrightPicturesAreDimmed() {
        // The 18 % grey card lies at 38 % in both systems.
        assertThat(DisplayCurve.HLG.exposure(grey(0.30, 64))).isEqualTo(1);
        assertThat(DisplayCurve.HLG.exposure(grey(0.38, 64))).isCloseTo(1, within(0.06));
        assertThat(DisplayCurve.HLG.exposure(grey(0.6, 64))).isBetween(0.203, 0.5);
        assertThat(DisplayCurve.HLG.exposure(grey(1, 64))).isEqualTo(0.203);
    }
}
