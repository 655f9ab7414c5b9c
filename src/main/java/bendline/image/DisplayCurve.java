package bendline.image;

/**
 * Brings wide-colour and high-dynamic-range pictures to what an ordinary screen shows. Curves and constants are those of
 * ITU-R BT.2100-2 (HLG and PQ), BT.1886 (the screen's own curve), BT.2087 (BT.2020 to BT.709 primaries) and BT.2408
 * (ordinary white at 203 cd/m²).
 */
@SuppressWarnings("ImmutableEnumChecker") // The tables are filled once and never handed out.
public enum DisplayCurve {

    /** Hybrid log-gamma, shown on a screen of 1000 cd/m². */
    HLG(0.8) {
        @Override
        double light(double signal) {
            return signal <= 0.5 ? signal * signal / 3 : (Math.exp((signal - HLG_C) / HLG_A) + HLG_B) / 12;
        }

        @Override
        double screenGain(double luminance) {
            return luminance <= 0 ? 0 : HLG_PEAK / WHITE * Math.pow(luminance, HLG_SYSTEM_GAMMA - 1);
        }
    },
    /** Perceptual quantiser, absolute up to 10 000 cd/m². */
    PQ(0.8) {
        @Override
        double light(double signal) {
            double p = Math.pow(signal, 1 / PQ_M2);
            return Math.pow(Math.max(0, p - PQ_C1) / (PQ_C2 - PQ_C3 * p), 1 / PQ_M1);
        }

        @Override
        double screenGain(double luminance) {
            return PQ_PEAK / WHITE;
        }
    },
    /** Ordinary range in the wide BT.2020 primaries. */
    WIDE(1) {
        @Override
        double light(double signal) {
            return Math.pow(signal, SCREEN_GAMMA);
        }

        @Override
        double screenGain(double luminance) {
            return 1;
        }
    };

    private static final double HLG_A = 0.17883277;
    private static final double HLG_B = 1 - 4 * HLG_A;
    /** 0.5 − a·ln(4a), written out because the tables are filled before computed constants are. */
    private static final double HLG_C = 0.55991073;

    private static final double HLG_PEAK = 1000;
    private static final double HLG_SYSTEM_GAMMA = 1.2;
    private static final double PQ_M1 = 2610.0 / 16384;
    private static final double PQ_M2 = 2523.0 / 4096 * 128;
    private static final double PQ_C1 = 3424.0 / 4096;
    private static final double PQ_C2 = 2413.0 / 4096 * 32;
    private static final double PQ_C3 = 2392.0 / 4096 * 32;
    private static final double PQ_PEAK = 10_000;
    private static final double WHITE = 203;
    private static final double SCREEN_GAMMA = 2.4;
    /** Shares of the BT.2020 primaries in luminance. */
    private static final float RED = 0.2627f;

    private static final float GREEN = 0.6780f;
    private static final float BLUE = 0.0593f;
    /** Where an average scene lies: BT.2408 puts the 18 % grey card at 26 cd/m². */
    private static final double USUAL_AVERAGE = 26 / WHITE;
    /** Shows the HLG screen's 1000 cd/m² as white. */
    private static final double LEAST_EXPOSURE = WHITE / 1000;

    private static final double DARKEST = 1e-4;
    private static final int SAMPLE_EVERY = 16;

    private static final int LEVELS = 4096;

    /** Light up to here stays as it is; what is brighter is pressed into the rest up to 1. */
    private final double knee;

    private final float[] lights = new float[LEVELS];
    private final float[] gains = new float[LEVELS];
    private final byte[] codes = new byte[LEVELS];

    DisplayCurve(double knee) {
        this.knee = knee;
        for (int i = 0; i < LEVELS; i++) {
            double x = i / (LEVELS - 1.0);
            lights[i] = (float) light(x);
            // Finer steps where it is dark: the tables are over the square root of light.
            gains[i] = (float) screenGain(x * x);
            codes[i] = (byte) Math.round(255 * Math.pow(x * x, 1 / SCREEN_GAMMA));
        }
    }

    /** Light of a signal 0–1: of the scene for HLG, of the screen else; 1 is the most the curve can say. */
    abstract double light(double signal);

    /** What light is multiplied by on the way to the screen, where ordinary white is 1, given its BT.2020 luminance. */
    abstract double screenGain(double luminance);

    /**
     * How bright a picture is meant to be seen: the factor on its light that brings its average to where ordinary pictures
     * have theirs. Light is only taken away, never added, and ordinary white stays where BT.2408 puts it in a picture of
     * usual brightness; a picture that fills the range up to the peak is dimmed to show all of it.
     *
     * @param rgb as for {@link #toBgr}
     * @return 0.203–1
     */
    public double exposure(short[] rgb) {
        double logs = 0;
        int count = 0;
        for (int i = 0; i + 2 < rgb.length; i += 3 * SAMPLE_EVERY) {
            float r = lights[(rgb[i] & 0xffff) >> 4];
            float g = lights[(rgb[i + 1] & 0xffff) >> 4];
            float b = lights[(rgb[i + 2] & 0xffff) >> 4];
            double luminance = RED * r + GREEN * g + BLUE * b;
            logs += Math.log(DARKEST + luminance * gains[index((float) luminance)]);
            count++;
        }
        double average = count == 0 ? 0 : Math.exp(logs / count);
        return Math.max(LEAST_EXPOSURE, Math.min(1, USUAL_AVERAGE / average));
    }

    /**
     * Converts a row or a whole picture.
     *
     * @param rgb red, green, blue, unsigned 16 bit, full range, in the curve's own signal
     * @param exposure factor on light, from {@link #exposure} of the clip's first picture, so that a clip does not flicker
     * @param bgr receives blue, green, red bytes for an ordinary screen; as long as {@code rgb}
     */
    public void toBgr(short[] rgb, double exposure, byte[] bgr) {
        for (int i = 0; i + 2 < rgb.length; i += 3) {
            float r = lights[(rgb[i] & 0xffff) >> 4];
            float g = lights[(rgb[i + 1] & 0xffff) >> 4];
            float b = lights[(rgb[i + 2] & 0xffff) >> 4];
            float gain = (float) exposure * gains[index(RED * r + GREEN * g + BLUE * b)];
            r *= gain;
            g *= gain;
            b *= gain;
            float red = 1.6605f * r - 0.5876f * g - 0.0728f * b;
            float green = -0.1246f * r + 1.1329f * g - 0.0083f * b;
            float blue = -0.0182f * r - 0.1006f * g + 1.1187f * b;
            float brightest = Math.max(red, Math.max(green, blue));
            float press = brightest <= knee ? 1 : (float) (pressed(brightest) / brightest);
            bgr[i] = codes[index(blue * press)];
            bgr[i + 1] = codes[index(green * press)];
            bgr[i + 2] = codes[index(red * press)];
        }
    }

    private double pressed(double light) {
        double room = 1 - knee;
        return room > 0 ? knee + room * (1 - Math.exp((knee - light) / room)) : knee;
    }

    private static int index(float light) {
        return light <= 0 ? 0 : light >= 1 ? LEVELS - 1 : (int) (Math.sqrt(light) * (LEVELS - 1) + 0.5);
    }
}
