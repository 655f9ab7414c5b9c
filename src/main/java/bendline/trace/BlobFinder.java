package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Compact moving things in a difference picture that are neither the rod nor the angler. */
final class BlobFinder {

    /** Strength from which a pixel counts if nothing else is said, noise units. */
    private static final float STRONG = 6;

    private static final int FEWEST_PIXELS = 4;
    private static final int MOST_BLOBS = 12;
    /** Largest area, as a share of the rod's length squared: a fast rig's streak, but no limb. */
    private static final double LARGEST = 0.012;
    /** Round the hands everything is arms, as a share of the rod's length. */
    private static final double HANDS = 0.2;

    /** Strong pixels of 25 round one that a line of two pixels' width does not reach, and how many of the most count as thick. */
    private static final int THICK = 14;

    private static final double THICK_SHARE = 0.7;

    /** From this length on a thin region may be line rather than rig, pixels. */
    private static final double LINE_PX = 14;

    /** How much of its length must lead away from the tip, and what of it is then taken for the rig, pixels. */
    private static final double RADIAL = 0.85;

    private static final double END_PX = 5;

    private final double rodPx;
    private final float least;

    BlobFinder(double rodPx) {
        this(rodPx, STRONG);
    }

    /** @param least strength from which a pixel counts, noise units */
    BlobFinder(double rodPx, float least) {
        this.rodPx = rodPx;
        this.least = least;
    }

    /** The strongest blobs. */
    List<Blob> find(Plane difference, @Nullable Fit rod) {
        return find(difference, rod, covered(difference, rod));
    }

    /** The same outside of pixels that {@link #covered} gave. */
    List<Blob> find(Plane difference, @Nullable Fit rod, boolean[] covered) {
        boolean[] used = covered.clone();
        float[] strength = difference.values();
        int[] stack = new int[1024];
        List<Blob> out = new ArrayList<>();
        for (int i = 0; i < used.length; i++) {
            if (Math.abs(strength[i]) >= least && !used[i]) {
                Region region = new Region(difference, used, stack, least);
                stack = region.flood(i);
                boolean fits = region.count >= FEWEST_PIXELS && region.count <= LARGEST * rodPx * rodPx;
                Blob blob = fits ? region.blob(rod) : null;
                if (blob != null) {
                    out.add(blob);
                }
            }
        }
        out.sort(Comparator.comparingDouble(b -> -b.mass()));
        return List.copyOf(out.subList(0, Math.min(MOST_BLOBS, out.size())));
    }

    /** Pixels that belong to blank and hands. */
    boolean[] covered(Plane difference, @Nullable Fit rod) {
        boolean[] used = new boolean[difference.values().length];
        if (rod != null) {
            cover(used, difference, rod);
        }
        return used;
    }

    private void cover(boolean[] used, Plane plane, Fit rod) {
        Polyline line = rod.line();
        double wide = 3 + 0.7 * rod.blurPx();
        for (double s = -0.2 * line.length(); s <= line.length() + 2; s += 1.5) {
            double share = Math.max(0.4, Math.min(1, s / line.length()));
            disc(used, plane, line.at(s), Math.max(4, wide * share));
        }
        disc(used, plane, line.first(), HANDS * rodPx);
    }

    private static void disc(boolean[] used, Plane plane, Point centre, double radius) {
        int top = (int) Math.max(0, centre.y() - radius);
        int bottom = (int) Math.min(plane.height() - 1.0, centre.y() + radius);
        for (int row = top; row <= bottom; row++) {
            double dy = row + 0.5 - centre.y();
            double half = Math.sqrt(Math.max(0, radius * radius - dy * dy));
            int left = (int) Math.max(0, centre.x() - half);
            int right = (int) Math.min(plane.width() - 1.0, centre.x() + half);
            for (int column = left; column <= right; column++) {
                used[row * plane.width() + column] = true;
            }
        }
    }

    /** A connected region while it is flooded. */
    private static final class Region {

        private final Plane plane;
        private final boolean[] used;
        private final float least;
        private int[] stack;
        private int count;
        private int[] pixels = new int[64];

        Region(Plane plane, boolean[] used, int[] stack, float least) {
            this.least = least;
            this.plane = plane;
            this.used = used;
            this.stack = stack;
        }

        int[] flood(int start) {
            int n = 0;
            stack[n++] = start;
            used[start] = true;
            count = 0;
            while (n > 0) {
                int i = stack[--n];
                take(i);
                int column = i % plane.width();
                int row = i / plane.width();
                if (n + 8 >= stack.length) {
                    stack = Arrays.copyOf(stack, 2 * stack.length);
                }
                for (int y = Math.max(0, row - 1); y <= Math.min(plane.height() - 1, row + 1); y++) {
                    for (int x = Math.max(0, column - 1); x <= Math.min(plane.width() - 1, column + 1); x++) {
                        int k = y * plane.width() + x;
                        if (!used[k] && Math.abs(plane.values()[k]) >= least) {
                            used[k] = true;
                            stack[n++] = k;
                        }
                    }
                }
            }
            return stack;
        }

        private void take(int i) {
            if (count == pixels.length) {
                pixels = Arrays.copyOf(pixels, 2 * count);
            }
            pixels[count++] = i;
        }

        /**
         * The thick part of the region, which is the rig where its line hangs on to it; the outer end, where there is only a line
         * that leads away from the tip; else all of it.
         */
        @Nullable
        Blob blob(@Nullable Fit rod) {
            int[] thickness = new int[count];
            int most = 0;
            for (int k = 0; k < count; k++) {
                thickness[k] = thickness(pixels[k]);
                most = Math.max(most, thickness[k]);
            }
            int limit = Math.max(THICK, (int) (THICK_SHARE * most));
            int[] thick = IntStream.range(0, count)
                    .filter(k -> thickness[k] >= limit)
                    .map(k -> pixels[k])
                    .toArray();
            int[] rig = thickest(thick);
            if (rig.length >= FEWEST_PIXELS) {
                return blob(rig);
            }
            int[] all = Arrays.copyOf(pixels, count);
            Blob whole = blob(all);
            return rod != null && whole != null && whole.lengthPx() > LINE_PX
                    ? outerEnd(whole, all, rod.line().last())
                    : whole;
        }

        /** The connected part that is thickest altogether: where a line turns it looks thick, too. */
        private int[] thickest(int[] thick) {
            Set<Integer> left = Arrays.stream(thick).boxed().collect(Collectors.toCollection(LinkedHashSet::new));
            int[] best = new int[0];
            long most = 0;
            for (int i : thick) {
                if (left.remove(i)) {
                    int[] part = part(i, left);
                    long sum = Arrays.stream(part)
                            .mapToLong(p -> thickness(p) - THICK + 1L)
                            .sum();
                    if (sum > most) {
                        most = sum;
                        best = part;
                    }
                }
            }
            return best;
        }

        /** What is connected with a pixel among others, which are taken out. */
        private int[] part(int start, Set<Integer> left) {
            List<Integer> out = new ArrayList<>(List.of(start));
            for (int k = 0; k < out.size(); k++) {
                for (int dy = -1; dy <= 1; dy++) {
                    for (int dx = -1; dx <= 1; dx++) {
                        int i = out.get(k) + dy * plane.width() + dx;
                        if (left.remove(i)) {
                            out.add(i);
                        }
                    }
                }
            }
            return out.stream().mapToInt(i -> i).toArray();
        }

        private @Nullable Blob outerEnd(Blob whole, int[] all, Point tip) {
            double near = Double.POSITIVE_INFINITY;
            double far = 0;
            for (int i : all) {
                double r = place(i).distance(tip);
                near = Math.min(near, r);
                far = Math.max(far, r);
            }
            if (far - near < RADIAL * whole.lengthPx()) {
                return whole;
            }
            double from = far - END_PX;
            return blob(Arrays.stream(all)
                    .filter(i -> place(i).distance(tip) >= from)
                    .toArray());
        }

        /** How many of the 25 pixels round one are strong. */
        private int thickness(int i) {
            int column = i % plane.width();
            int row = i / plane.width();
            int n = 0;
            for (int y = Math.max(0, row - 2); y <= Math.min(plane.height() - 1, row + 2); y++) {
                for (int x = Math.max(0, column - 2); x <= Math.min(plane.width() - 1, column + 2); x++) {
                    n += Math.abs(plane.values()[y * plane.width() + x]) >= least ? 1 : 0;
                }
            }
            return n;
        }

        private Point place(int i) {
            return new Point(i % plane.width() + 0.5, i / plane.width() + 0.5);
        }

        private @Nullable Blob blob(int[] part) {
            double mass = 0;
            double sx = 0;
            double sy = 0;
            double sxx = 0;
            double sxy = 0;
            double syy = 0;
            for (int i : part) {
                double w = Math.min(30, Math.abs(plane.values()[i]));
                Point p = place(i);
                mass += w;
                sx += w * p.x();
                sy += w * p.y();
                sxx += w * p.x() * p.x();
                sxy += w * p.x() * p.y();
                syy += w * p.y() * p.y();
            }
            if (mass <= 0) {
                return null;
            }
            double cx = sx / mass;
            double cy = sy / mass;
            double a = sxx / mass - cx * cx + 1 / 12.0;
            double b = sxy / mass - cx * cy;
            double c = syy / mass - cy * cy + 1 / 12.0;
            double mean = (a + c) / 2;
            double swing = Math.hypot((a - c) / 2, b);
            // An even bar of length l has variance l²/12.
            double length = Math.sqrt(12 * (mean + swing));
            double width = Math.sqrt(12 * Math.max(0, mean - swing));
            return new Blob(new Point(cx, cy), mass, length, width);
        }
    }
}
