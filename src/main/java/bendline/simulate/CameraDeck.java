package bendline.simulate;

import java.util.Random;

/** Deals phones: sizes, rates, exposures, places to stand, hands. */
final class CameraDeck {

    /** Width, height, capture rate, stored rate; the commonest more than once. */
    private static final int[][] FORMATS = {
        {1920, 1080, 60, 60},
        {1920, 1080, 30, 30},
        {1280, 720, 120, 120},
        {1920, 1080, 60, 60},
        {1080, 1920, 60, 60},
        {1280, 720, 60, 60},
        {1280, 720, 240, 240},
        {1920, 1080, 120, 120},
        {1920, 1080, 60, 60},
        {1280, 720, 30, 30},
        {720, 1280, 60, 60},
        {1280, 720, 240, 30}
    };

    private final Random random;
    private int next;

    CameraDeck(Random random) {
        this.random = random;
        this.next = random.nextInt(FORMATS.length);
    }

    /** The next phone; for a long clip or one with nothing in it one that does not film thousands of frames. */
    CameraSpec deal(boolean longClip, boolean empty) {
        int[] format = FORMATS[next++ % FORMATS.length];
        if ((longClip || empty) && format[2] > 60) {
            format = FORMATS[5];
        }
        boolean portrait = format[0] < format[1];
        double px = Math.max(format[0], format[1]);
        double focal = px * between(0.74, 0.84);
        // Wide enough for the rod behind and before the angler, high enough for it upright.
        double view = portrait ? 8.7 / format[0] : 6.6 / format[1];
        double distance = between(1.0, 1.15) * view * focal;
        double rate = format[2];
        double exposure = Math.min(0.8 / rate, Math.exp(between(Math.log(0.0008), Math.log(0.010))));
        boolean tripod = random.nextInt(5) < 2;
        double yaw = random.nextInt(3) == 0 ? between(-18, 18) : between(-5, 5);
        double height = between(1.2, 1.7);
        double aimY = portrait ? between(2.4, 2.9) : between(2.5, 2.75);
        return new CameraSpec(
                format[0],
                format[1],
                portrait ? 90 : random.nextInt(8) == 0 ? 180 : 0,
                rate,
                format[3],
                exposure,
                focal,
                distance,
                height,
                yaw,
                between(0.1, 0.6),
                aimY,
                tripod ? between(-0.5, 0.5) : between(-1.5, 1.5),
                tripod ? 0 : between(0.5, 2.2),
                between(1, 5),
                between(0, 0.08),
                (int) (px > 1500 ? between(9e6, 17e6) : between(5e6, 10e6)));
    }

    private double between(double least, double most) {
        return least + random.nextDouble() * (most - least);
    }
}
