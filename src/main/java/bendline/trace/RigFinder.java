package bendline.trace;

import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Follows the rig. */
final class RigFinder {

    private final List<Integer> frames = new ArrayList<>();

    RigFinder(double heightPx, double rodPx) {}

    void add(Plane difference, @Nullable Fit rod) {
        frames.add(frames.size());
    }

    List<Tracked> choose(List<Look> looks) {
        return frames.stream().map(i -> Tracked.notSeen(null, "not looked for")).toList();
    }
}
