package bendline.simulate;

import java.util.Random;

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
        Random random = new Random(seed * 31 + frame);
        int offset = 0;
        for (int i = 0; i + 2 < bgr.length; i += 3) {
            if (i % 1533 == 0) {
                offset = random.nextInt(TILE);
            }
            for (int c = 0; c < 3; c++) {
                int v = (bgr[i + c] & 255) * gain >> 12;
                v = Math.min(255, v);
                // 8 (scale) · 32 (tile) = 256
                v += tile[offset] * scale[v] + 128 >> 8;
                offset = offset + 1 & TILE - 1;
                bgr[i + c] = (byte) Math.max(0, Math.min(255, v));
            }
        }
    }
}
