package bendline.scene;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What samples of a clip that lie over each other show at each pixel. Each pixel is its own, so that all processors can work on some.
 *
 * @param pixels of each sample, row by row
 * @param weight what each sample counts, positive
 * @param covered what of the samples is left out, where enough is left
 */
record SampleStack(byte[][] pixels, double[] weight, Covered covered) {

    /** Least number of samples that must show a pixel bare. */
    static final int FEWEST = 3;

    /** Pixels of every sample that are held at once. */
    private static final int PIECE = 512;

    /** The share of frames whose straying the noise covers; a blank passes over a pixel in far fewer than the rest. */
    private static final double COVERED = 0.8;

    /** Says whether something that moves is known to lie over a pixel of a sample. */
    interface Covered {
        boolean at(int sample, int pixel);

        /** Whether it lies over the pixel in any sample. */
        boolean ever(int pixel);
    }

    /** A level each pixel for which half of the samples are darker. */
    float[] median() {
        double all = Arrays.stream(weight).sum();
        return eachPixel((piece, i) -> {
            if (!covered.ever(i)) {
                piece.levels.addAll(piece.pixels, piece.at, weight, all);
            } else {
                piece.bare(i);
                for (int k = 0; k < weight.length; k++) {
                    if (piece.counts[k]) {
                        piece.levels.add(piece.level(k), weight[k]);
                    }
                }
            }
            return piece.levels.quantileAndClear(0.5);
        });
    }

    /** How far each pixel usually strays out of a range, at least {@link Background#QUIET}. */
    float[] noise(float[] low, float[] high) {
        double enough = COVERED * (1 + 1e-9) * Arrays.stream(weight).sum();
        return eachPixel((piece, i) -> {
            boolean bare = !covered.ever(i);
            if (bare && piece.quietWeight(low[i], high[i]) > enough) {
                return Background.QUIET;
            }
            if (!bare) {
                piece.bare(i);
            }
            for (int k = 0; k < weight.length; k++) {
                if (bare || piece.counts[k]) {
                    piece.levels.add((int) (Math.abs(stray(piece.level(k), low[i], high[i])) + 0.5f), weight[k]);
                }
            }
            return Math.max(Background.QUIET, piece.levels.quantileAndClear(COVERED));
        });
    }

    private static float stray(float value, float low, float high) {
        // One of the two is zero; without branches, which are as good as random in foliage.
        return Math.min(0, value - low) + Math.max(0, value - high);
    }

    private interface Rule {
        float value(Piece piece, int pixel);
    }

    private float[] eachPixel(Rule rule) {
        float[] out = new float[pixels[0].length];
        IntStream.rangeClosed(0, (out.length - 1) / PIECE).parallel().forEach(k -> {
            Piece piece = new Piece(k * PIECE);
            int to = Math.min(out.length, (k + 1) * PIECE);
            for (int i = k * PIECE; i < to; i++, piece.at++) {
                out[i] = rule.value(piece, i);
            }
        });
        return out;
    }

    /** Some neighbouring pixels of every sample side by side: sixty pictures at once are more than a processor can keep up with. */
    private final class Piece {

        private final byte[][] pixels = new byte[weight.length][PIECE];
        private final boolean[] counts = new boolean[weight.length];
        private final WeightedLevels levels = new WeightedLevels();
        private int at;

        Piece(int from) {
            byte[][] all = SampleStack.this.pixels;
            for (int k = 0; k < all.length; k++) {
                System.arraycopy(all[k], from, pixels[k], 0, Math.min(PIECE, all[k].length - from));
            }
        }

        private int level(int sample) {
            return pixels[sample][at] & 0xff;
        }

        /** Weight of the samples that stray so little that they are no noisier than is allowed for anyway. */
        private double quietWeight(float low, float high) {
            // Straying is told in whole levels.
            int least = (int) Math.floor(low - Background.QUIET) + 1;
            int most = (int) Math.ceil(high + Background.QUIET) - 1;
            double quiet = 0;
            for (int k = 0; k < pixels.length; k++) {
                int level = level(k);
                quiet += level >= least && level <= most ? weight[k] : 0;
            }
            return quiet;
        }

        /** Notes which samples show a pixel bare; all, where fewer than three do. */
        private void bare(int pixel) {
            int bare = 0;
            for (int k = 0; k < counts.length; k++) {
                counts[k] = !covered.at(k, pixel);
                bare += counts[k] ? 1 : 0;
            }
            if (bare < FEWEST) {
                Arrays.fill(counts, true);
            }
        }
    }
}
