package bendline.benchmark;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.scene.Mark;
import bendline.scene.Setup;
import bendline.trace.RodTracker;
import bendline.trace.Trace;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Follows a rod through real footage with grip and tip marked on one labelled frame and prints how far the traced blank
 * lies from what a person sees: {@code ScoreLabels CLIP LABELS FRAME}.
 */
public final class ScoreLabels {

    private ScoreLabels() {}

    /** Runs it. */
    public static void main(String[] args) throws Exception {
        HandLabels labels = HandLabels.read(args[1]);
        Trace trace = follow(Path.of(args[0]), labels.at(Integer.parseInt(args[2])));
        System.out.printf(
                Locale.ROOT,
                "%s, mark on frame %s%s%n%s%n",
                args[1],
                args[2],
                trace.trouble() == null ? "" : ", TROUBLE " + trace.trouble(),
                LabelScore.of(trace, labels));
    }

    /** The trace with grip and tip of one labelled frame marked. */
    static Trace follow(Path clip, HandLabels.Label marked) {
        Footage footage = Footage.open(clip);
        ClipInfo info = footage.survey(f -> {});
        Mark mark = new Mark(info.times().get(marked.frame()), marked.grip(), marked.tip());
        Setup setup = new Setup(null, null, null, null, null, null, List.of(mark));
        return RodTracker.follow(footage, info, setup, f -> {});
    }
}
