package bendline.trace;

import bendline.geometry.Point;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Where the rig is by what was chosen for it in each frame, and how well that is known. */
final class RigPlaces {

    /** A straight line that ends so near to the drop's circle is held tight by a rig, which is then on the circle, drops. */
    static final double TIGHT = 0.12;

    /** How well the rig's place is known then along the line and across it, drops and pixels. */
    private static final double TIGHT_SD = 0.02;

    private static final double ACROSS_SD_PX = 2.5;

    /** How well a rig's middle is known: at least, pixels, and of how long it looks and of what seems missing; and a mass that shows all of it. */
    private static final double FLOOR_PX = 0.3;

    private static final double OF_LENGTH = 0.02;
    private static final double OF_MISSING = 0.5;
    private static final double FAINT = 250;

    /** Share of the rigs that look shorter than a whole one. */
    private static final double WHOLE = 0.8;

    private RigPlaces() {}

    /**
     * One entry a frame.
     *
     * @param path what was chosen in each frame, or null
     * @param drop tip to rig, pixels
     */
    static List<Tracked> of(@Nullable Blob[] path, List<Look> looks, double drop) {
        double whole = wholeLength(path);
        List<Tracked> out = new ArrayList<>(path.length);
        for (int t = 0; t < path.length; t++) {
            out.add(tracked(path[t], looks.get(t).chosen(), drop, whole));
        }
        return List.copyOf(out);
    }

    /** How long a rig looks that shows whole, pixels: longer than most, as many show in part. */
    private static double wholeLength(@Nullable Blob[] path) {
        double[] lengths = Arrays.stream(path)
                .mapToDouble(b -> b == null || b.lineEnd() ? Double.NaN : b.lengthPx())
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        return lengths.length == 0 ? 0 : lengths[(int) (WHOLE * lengths.length)];
    }

    private static Tracked tracked(@Nullable Blob blob, @Nullable Fit rod, double drop, double wholePx) {
        if (blob == null) {
            return Tracked.notSeen(null, "nothing compact moves where the rig should be");
        }
        if (!blob.lineEnd()) {
            // Of a rig that hardly differs from what lies behind, only a part may show.
            double missing = wholePx * Math.min(1, Math.pow(FAINT / blob.mass(), 2));
            return Tracked.seen(blob.centre(), FLOOR_PX + OF_LENGTH * blob.lengthPx() + OF_MISSING * missing);
        }
        if (rod == null || Math.abs(blob.centre().distance(RigFinder.tip(rod)) - drop) > TIGHT * drop) {
            return Tracked.notSeen(blob.centre(), "only its line is seen, and that hangs slack");
        }
        Point way = blob.centre().minus(RigFinder.tip(rod));
        Point onCircle = RigFinder.tip(rod).plus(way.times(drop / way.norm()));
        return Tracked.seen(onCircle, Math.hypot(ACROSS_SD_PX, TIGHT_SD * drop));
    }
}
