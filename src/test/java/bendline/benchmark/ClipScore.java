package bendline.benchmark;

import bendline.analysis.ClipAnalysis;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Everything scored on one clip or on several pooled.
 *
 * @param name of the clip or the set
 * @param trace frame by frame
 * @param casts cast by cast
 * @param baselines general trackers by name; empty where no rod is ever in view
 * @param noClicks of the clips with a rod: followed without a mark, that is with the tip within 20 px in at least nine of
 *     ten frames in which it is in view
 * @param clips how many
 */
public record ClipScore(
        String name, TraceScore trace, CastScore casts, Map<String, PointScore> baselines, Tally noClicks, int clips) {

    private static final double FOLLOWED = 0.9;

    /** Copies the map. */
    public ClipScore {
        baselines = Map.copyOf(baselines);
    }

    static ClipScore of(ClipAnalysis told, TruthClip truth, Map<String, PointScore> baselines) {
        TraceScore trace = TraceScore.of(told.trace(), truth);
        Tally lost = trace.tipLostOrWrong();
        Tally noClicks = lost.of() == 0 ? Tally.NONE : Tally.NONE.plus(1 - lost.share() >= FOLLOWED);
        return new ClipScore(truth.name(), trace, CastScore.of(told, truth), baselines, noClicks, 1);
    }

    static ClipScore pooled(String name, List<ClipScore> clips) {
        CastScore casts = CastScore.NONE;
        Tally noClicks = Tally.NONE;
        Map<String, PointScore> baselines = new LinkedHashMap<>();
        List<TraceScore> traces = new ArrayList<>();
        for (ClipScore clip : clips) {
            casts = casts.with(clip.casts);
            noClicks = noClicks.with(clip.noClicks);
            clip.baselines.forEach((kind, score) -> baselines.merge(kind, score, PointScore::with));
            traces.add(clip.trace);
        }
        return new ClipScore(name, TraceScore.pooled(traces), casts, baselines, noClicks, clips.size());
    }
}
