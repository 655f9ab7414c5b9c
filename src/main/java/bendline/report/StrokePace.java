package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** When each frame is shown where the strokes play slower than the rest; no frame is added or dropped. */
final class StrokePace {

    /** Real time before the push and after the rod is straight that is slowed too. */
    private static final double ROOM_SECONDS = 0.15;

    private final double slower;

    /** Clip times of the slowed stretches, in order, none touching another. */
    private final List<double[]> stretches = new ArrayList<>();

    /** @param slower how many times, from 1 */
    StrokePace(ClipAnalysis analysis, double slower) {
        this.slower = slower;
        double room = ROOM_SECONDS * analysis.info().slowMotion().factor();
        if (slower > 1) {
            analysis.casts().forEach(c -> add(c.stroke(), room));
        }
    }

    private void add(Stroke stroke, double room) {
        double[] known = Stream.of(
                        EventKind.FORWARD_START,
                        EventKind.PEAK_BEND,
                        EventKind.STOP,
                        EventKind.RELEASE,
                        EventKind.ROD_STRAIGHT)
                .map(k -> stroke.event(k).seconds())
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
        if (known.length == 0) {
            return;
        }
        double from = Math.max(0, known[0] - room);
        double to = known[known.length - 1] + room;
        double[] last = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
        if (last != null && from <= last[1]) {
            last[1] = Math.max(last[1], to);
        } else {
            stretches.add(new double[] {from, to});
        }
    }

    double slower() {
        return slower;
    }

    /** Whether the clip is slowed at a clip time. */
    boolean slowAt(double seconds) {
        return stretches.stream().anyMatch(s -> seconds >= s[0] && seconds <= s[1]);
    }

    /** When the frame of a clip time is shown. */
    double shownAt(double seconds) {
        double out = seconds;
        for (double[] s : stretches) {
            out += (slower - 1) * Math.max(0, Math.min(seconds, s[1]) - s[0]);
        }
        return out;
    }
}
