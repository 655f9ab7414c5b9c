package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** The stretches of clip time in which rods are pushed, from the start of the push until the rod is straight, with room about. */
final class StrokeTimes {

    /** In order, none touching another. */
    private final List<double[]> stretches = new ArrayList<>();

    /** @param roomSeconds real time added before and after */
    StrokeTimes(ClipAnalysis analysis, double roomSeconds) {
        double room = roomSeconds * analysis.info().slowMotion().factor();
        analysis.casts().forEach(c -> add(c.stroke(), room));
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

    /** Whether a clip time lies in one. */
    boolean hold(double seconds) {
        return stretches.stream().anyMatch(s -> seconds >= s[0] && seconds <= s[1]);
    }

    /** How many seconds of them are over at a clip time. */
    double over(double seconds) {
        return stretches.stream()
                .mapToDouble(s -> Math.max(0, Math.min(seconds, s[1]) - s[0]))
                .sum();
    }
}
