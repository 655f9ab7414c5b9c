package bendline.benchmark;

import bendline.geometry.Polyline;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A trace of real footage against what a person sees, one entry a labelled frame. Distances in pixels of the picture.
 *
 * @param frames labelled frames, in order
 */
public record LabelScore(List<Entry> frames) {

    /**
     * One labelled frame.
     *
     * @param frame decoded frames counted from 0
     * @param blankDistance mean distance of the labelled points of the blank from the traced blank; infinite where no blank
     *     was traced
     * @param tipError distance of the tip called seen from the labelled one; NaN where either is missing
     */
    public record Entry(int frame, double blankDistance, double tipError) {}

    /** Copies the list. */
    public LabelScore {
        frames = List.copyOf(frames);
    }

    /** Compares. */
    public static LabelScore of(Trace trace, HandLabels labels) {
        List<Entry> out = new ArrayList<>();
        for (HandLabels.Label label : labels.frames()) {
            FrameTrace traced = trace.inPicture(label.frame());
            boolean both = label.tip() != null && traced.tip().seen();
            out.add(new Entry(
                    label.frame(),
                    distance(label, traced.blank()),
                    both ? traced.tip().position().distance(label.tip()) : Double.NaN));
        }
        return new LabelScore(out);
    }

    private static double distance(HandLabels.Label label, @Nullable Polyline blank) {
        return blank == null
                ? Double.POSITIVE_INFINITY
                : label.blank().stream()
                        .mapToDouble(blank::distanceTo)
                        .average()
                        .orElse(Double.NaN);
    }

    /** Of the labelled frames: the traced blank lies on the labelled one, within a mean distance. */
    public Tally onBlank(double withinPx) {
        Tally out = Tally.NONE;
        for (Entry e : frames) {
            out = out.plus(e.blankDistance() <= withinPx);
        }
        return out;
    }

    @Override
    public String toString() {
        StringBuilder out = new StringBuilder();
        for (Entry e : frames) {
            out.append(String.format(
                    Locale.ROOT, "%d: blank %.1f tip %.1f; ", e.frame(), e.blankDistance(), e.tipError()));
        }
        return out.toString();
    }
}
