package bendline.simulate;

import java.util.Random;
import java.util.stream.IntStream;

/** What the phone's sensor adds: brightness that drifts, and noise that grows with the light. */
final class Sensor {

    private static final int TILE = 1 << 18;

    private final double noise;
    private final double drift;
    private final double driftPhase;
    private final long seed;
    private final byte[] tile = new byte[TILE];
    private final int[] scale = new int[256];

    Sensor(CameraSpec camera, long seed) {
        this.noise = camera.noise();
        this.drift = camera.gainDrift();
        this.seed = seed;
        Random random = new Random(seed ^ 0x5e45L);
        this.driftPhase = random.nextDouble() * 2 * Math.PI;
        for (int i = 0; i < TILE; i++) {
            tile[i] = (byte) Math.max(-127, Math.min(127, Math.round(32 * random.nextGaussian())));
        }
        for (int v = 0; v < 256; v++) {
            // After the tone curve noise is largest in the darker middle tones and falls off towards white.
            double size = noise * (0.65 + 0.7 * Math.sqrt(v / 255.0) * (1 - v / 320.0) * 1.6);
            scale[v] = (int) Math.round(size * 8);
        }
    }

    /** Brightness factor at a real time in seconds. */
    double gain(double t) {
        return 1 + drift * (0.7 * Math.sin(0.9 * t + driftPhase) + 0.3 * Math.sin(2.7 * t + 2 * driftPhase));
    }

    /** Applies gain and noise to a frame of blue, green and red bytes in place. */
    void expose(byte[] bgr, int frame, double t) {
        int gain = (int) Math.round(gain(t) * 4096);
        int run = 1 << 14;
        IntStream.range(0, (bgr.length + run - 1) / run).parallel().forEach(part -> {
            int from = part * run;
            int offset = new Random(seed * 31 + 1009L * frame + part * 77_777L).nextInt(TILE);
            expose(bgr, from, Math.min(bgr.length, from + run), gain, offset);
        });
    }

    private void expose(byte[] bgr, int from, int to, int gain, int start) {
        int offset = start;
        for (int i = from; i < to; i++) {
            int v = Math.min(255, ((bgr[i] & 255) * gain) >> 12);
            // 8 (scale) times 32 (tile) is 256.
            v += (tile[offset] * scale[v] + 128) >> 8;
            offset = (offset + 1) & (TILE - 1);
            bgr[i] = (byte) Math.max(0, Math.min(255, v));
        }
    }
}
