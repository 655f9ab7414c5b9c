package bendline.scene;

import bendline.footage.Frame;
import bendline.footage.Tint;
import bendline.geometry.Homography;
import bendline.image.Area;
import bendline.image.Luma;
import bendline.image.PackedPlane;
import bendline.image.Plane;
import bendline.image.PlanePool;
import bendline.image.Warp;
import bendline.image.WarpedRows;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What lies behind everything that moves, in grey and, where the clip allows, in colour. Tips are painted in colours that stand
 * out to the eye and yet may be as bright as the sky behind them, and a grey blank is lost in foliage of its own brightness; so
 * colour speaks where brightness is silent.
 *
 * @param grey the grey plane's background
 * @param blue that of the blue colour difference, at half size; null where there is none
 * @param red that of the red colour difference, at half size; null where there is none
 */
public record Backdrop(
        Background grey,
        @Nullable Background blue,
        @Nullable Background red) {

    /** What a difference in colour counts: it is known at half the detail. */
    private static final float COLOUR_SHARE = 0.7f;

    /** Sum of a cell's four grey differences that tells nothing, noise units. */
    private static final float SILENT = 2;

    /** Gathers the stabilised frames from which a background is made. */
    static final class Samples {

        private static final Luma GONE = new Luma(1, 1, new byte[1]);

        private final List<Integer> frames = new ArrayList<>();
        private final List<Double> seconds = new ArrayList<>();
        private final List<Luma> grey = new ArrayList<>();
        private final List<Luma> blue = new ArrayList<>();
        private final List<Luma> red = new ArrayList<>();
        private final List<BitSet> covered = new ArrayList<>();

        void add(Frame frame, Homography map) {
            add(frame, map, null);
        }

        /** A frame of which a part is known to be covered. */
        void add(Frame frame, Homography map, @Nullable Cover cover) {
            int w = frame.luma().width();
            frames.add(frame.index());
            seconds.add(frame.seconds());
            covered.add(
                    cover == null ? new BitSet() : cover.pixels(w, frame.luma().height()));
            grey.add(Warp.apply(frame.luma(), map));
            Tint tint = frame.tint();
            if (tint != null) {
                blue.add(Warp.apply(tint.blue(), halved(map)));
                red.add(Warp.apply(tint.red(), halved(map)));
            }
        }

        int size() {
            return grey.size();
        }

        /** Samples in which nothing is known to be covered count by how much moves about them, else all alike. */
        Backdrop backdrop() {
            boolean known = covered.stream().anyMatch(c -> !c.isEmpty());
            double[] weight = known ? new double[grey.size()] : SampleWeights.of(grey);
            if (known) {
                Arrays.fill(weight, 1);
            }
            int width = grey.get(0).width();
            boolean coloured = blue.size() == grey.size();
            BitSet ever = new BitSet();
            covered.forEach(ever::or);
            SampleStack.Covered whole = new Over(covered, ever, i -> i);
            SampleStack.Covered halves =
                    new Over(covered, ever, i -> 2 * (i / (width / 2)) * width + 2 * (i % (width / 2)));
            return new Backdrop(
                    Background.of(grey, weight, whole),
                    coloured ? Background.of(blue, weight, halves) : null,
                    coloured ? Background.of(red, weight, halves) : null);
        }

        /** What shows in each of them, which are let go of one by one: both together are too much memory for a short clip's. */
        List<Glimpse> intoGlimpses(Backdrop behind) {
            PlanePool pool = new PlanePool();
            return IntStream.range(0, size())
                    .parallel()
                    .mapToObj(k -> glimpse(behind, k, pool))
                    .toList();
        }

        private Glimpse glimpse(Backdrop behind, int k, PlanePool pool) {
            Luma picture = grey.get(k);
            Tint tint = blue.size() == grey.size() ? new Tint(blue.get(k), red.get(k)) : null;
            Frame frame = new Frame(frames.get(k), seconds.get(k), picture, tint);
            Area whole = new Area(0, 0, picture.width(), picture.height());
            Plane plane = behind.difference(frame, Homography.IDENTITY, whole, pool);
            Glimpse out = new Glimpse(frame.index(), frame.seconds(), PackedPlane.of(plane));
            pool.giveBack(plane);
            grey.set(k, GONE);
            if (tint != null) {
                blue.set(k, GONE);
                red.set(k, GONE);
            }
            return out;
        }
    }

    /** What is known to lie over pixels of planes, of which each is told by one of the whole pictures. */
    private record Over(List<BitSet> covered, BitSet any, IntUnaryOperator inPicture) implements SampleStack.Covered {

        @Override
        public boolean at(int sample, int pixel) {
            return covered.get(sample).get(inPicture.applyAsInt(pixel));
        }

        @Override
        public boolean ever(int pixel) {
            return !any.isEmpty() && any.get(inPicture.applyAsInt(pixel));
        }
    }

    /**
     * How far each pixel of a part of a frame is from the background, in units of the noise; darker is negative.
     *
     * @param map the frame's pixels to the reference picture's
     * @param area part of the reference picture; this backdrop must have been cut to it
     */
    public Plane difference(Frame frame, Homography map, Area area) {
        return difference(frame, map, area, new PlanePool());
    }

    /**
     * The same in a plane from a pool.
     *
     * @param pool to which the caller gives the plane back
     */
    public Plane difference(Frame frame, Homography map, Area area, PlanePool pool) {
        Plane difference = grey.difference(new WarpedRows(frame.luma(), map, area), pool);
        Tint tint = frame.tint();
        if (tint != null && blue != null && red != null && area.halves()) {
            Area half = area.half();
            Plane b = blue.difference(new WarpedRows(tint.blue(), halved(map), half), pool);
            Plane r = red.difference(new WarpedRows(tint.red(), halved(map), half), pool);
            Plane most = pool.take(b.width(), b.height());
            strongestOfCells(difference, most);
            addColour(difference, b, r, most.values());
            List.of(b, r, most).forEach(pool::giveBack);
        }
        return difference;
    }

    /** The part inside an area, whose corner becomes the origin. */
    public Backdrop cut(Area area) {
        boolean coloured = blue != null && red != null && area.halves();
        return new Backdrop(
                grey.cut(area), coloured ? blue.cut(area.half()) : null, coloured ? red.cut(area.half()) : null);
    }

    /** A map between pictures as a map between pictures of half the size. */
    private static Homography halved(Homography map) {
        return Homography.scale(2).then(map).then(Homography.scale(0.5));
    }

    /** Where a cell of colour and its neighbours differ more than their brightness does, the colour is put in its place. */
    private static void addColour(Plane grey, Plane blue, Plane red, float[] most) {
        int columns = blue.width();
        int rows = blue.height();
        float[] g = grey.values();
        for (int y = 1; y < rows - 1; y++) {
            for (int x = 1; x < columns - 1; x++) {
                int i = y * columns + x;
                float b = blue.values()[i];
                float r = red.values()[i];
                float stronger = Math.abs(b) > Math.abs(r) ? b : r;
                float colour = COLOUR_SHARE * Math.abs(stronger);
                if (colour > 1 && colour > strongest(most, i, columns)) {
                    // One sign along a line: that of its brightness, or where brightness tells nothing, of its colour.
                    int at = 2 * y * grey.width() + 2 * x;
                    float sum = g[at] + g[at + 1] + g[at + grey.width()] + g[at + grey.width() + 1];
                    float signed = Math.copySign(colour, Math.abs(sum) > SILENT ? sum : stronger);
                    g[at] = signed;
                    g[at + 1] = signed;
                    g[at + grey.width()] = signed;
                    g[at + grey.width() + 1] = signed;
                }
            }
        }
    }

    /** The largest difference of either sign in each cell of four pixels. */
    private static void strongestOfCells(Plane grey, Plane out) {
        int columns = out.width();
        float[] most = out.values();
        float[] pair = new float[2 * columns];
        float[] lower = new float[2 * columns];
        for (int y = 0; y < out.height(); y++) {
            int at = 2 * y * grey.width();
            System.arraycopy(grey.values(), at, pair, 0, pair.length);
            System.arraycopy(grey.values(), at + grey.width(), lower, 0, lower.length);
            larger(pair, lower);
            for (int x = 0; x < columns; x++) {
                most[y * columns + x] = Math.max(pair[2 * x], pair[2 * x + 1]);
            }
        }
    }

    private static void larger(float[] out, float[] other) {
        for (int x = 0; x < out.length; x++) {
            out[x] = Math.max(Math.abs(out[x]), Math.abs(other[x]));
        }
    }

    private static float strongest(float[] most, int i, int columns) {
        float best = 0;
        for (int row = i - columns; row <= i + columns; row += columns) {
            best = Math.max(best, Math.max(most[row - 1], Math.max(most[row], most[row + 1])));
        }
        return best;
    }
}
