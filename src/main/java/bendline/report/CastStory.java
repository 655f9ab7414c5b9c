package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Quality;
import bendline.scene.Setup.Side;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.technique.Finding;
import bendline.technique.Finding.State;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What the top of the report says of one cast. */
final class CastStory {

    private final ClipAnalysis analysis;
    private final CastAnalysis cast;

    CastStory(ClipAnalysis analysis, CastAnalysis cast) {
        this.analysis = analysis;
        this.cast = cast;
    }

    /** The outcome in a few words. */
    String headline() {
        Finding next = cast.review().next();
        if (next != null) {
            return next.title();
        }
        return count(State.CANNOT_TELL) == 0 ? "No fault found" : "No fault found, as far as could be told";
    }

    /** The one thing to do: the drill, or what would make the next clip tell more, or more casts. */
    String next() {
        Finding next = cast.review().next();
        if (next != null) {
            return next.drill();
        }
        List<String> advice = analysis.quality().advice();
        return count(State.CANNOT_TELL) > 0 && !advice.isEmpty()
                ? advice.get(0)
                : "Change nothing, and film more casts the same way: one cast shows what happened once.";
    }

    /** What happened: the finding in its own words, then the cast in times. */
    List<String> happened() {
        List<String> out = new ArrayList<>();
        Finding next = cast.review().next();
        if (next != null) {
            out.add(next.brief());
        }
        List<String> others = cast.review().findings().stream()
                .filter(f -> f.state() == State.FOUND && (next == null || !f.id().equals(next.id())))
                .map(f -> "“" + f.title() + "”")
                .toList();
        if (!others.isEmpty()) {
            out.add("Also found: " + String.join(", ", others) + ".");
        }
        out.add(times());
        return out;
    }

    private String times() {
        Stroke s = cast.stroke();
        List<String> parts = new ArrayList<>();
        lasted(EventKind.BACKSWING_START, EventKind.BACKSWING_END)
                .ifPresent(t -> parts.add(Words.of("backswing %.2f s", t)));
        lasted(EventKind.FORWARD_START, EventKind.RELEASE)
                .ifPresent(t -> parts.add(Words.of("push to release %.2f s", t)));
        Event peak = s.event(EventKind.PEAK_BEND);
        if (peak.seconds() != null) {
            parts.add(Words.of("most bend at %.2f s of the clip", peak.seconds()));
        }
        String side = s.castsTo() == Side.RIGHT ? "right" : "left";
        return "The cast goes to the " + side + (parts.isEmpty() ? "." : ": " + String.join(", ", parts) + ".");
    }

    private Optional<Double> lasted(EventKind from, EventKind to) {
        Double a = cast.stroke().event(from).seconds();
        Double b = cast.stroke().event(to).seconds();
        return a == null || b == null
                ? Optional.empty()
                : Optional.of((b - a) / analysis.info().slowMotion().factor());
    }

    /** How sure that is. */
    List<String> howSure() {
        List<String> out = new ArrayList<>();
        Finding next = cast.review().next();
        if (next != null && !StateWords.howSure(next).isEmpty()) {
            out.add(StateWords.howSure(next));
        }
        Quality q = analysis.quality();
        out.add(Words.of("The tip was seen in %.0f %% of the frames of the cast.", 100 * tipShare(cast.stroke())));
        if (Double.isFinite(q.captureRateHz())) {
            out.add(Words.of("One picture every %.1f ms.", 1000 / q.captureRateHz()));
        }
        long open = count(State.CANNOT_TELL);
        if (open > 0) {
            out.add(Words.of(
                    "%d of %d faults looked for could not be told.",
                    open, cast.review().findings().size()));
        }
        return out;
    }

    private double tipShare(Stroke s) {
        int all = 0;
        int seen = 0;
        for (int i = s.firstFrame(); i <= s.lastFrame(); i++) {
            all++;
            seen += analysis.trace().frames().get(i).tip().seen() ? 1 : 0;
        }
        return all == 0 ? 0 : (double) seen / all;
    }

    private long count(State state) {
        return cast.review().findings().stream().filter(f -> f.state() == state).count();
    }

    /** The picture that shows it best, if there is one. */
    Optional<Still> picture(Map<Integer, Still> stills) {
        Finding next = cast.review().next();
        List<Integer> evidence = next == null ? List.of() : next.evidenceFrames();
        Stream<Integer> last = evidence.isEmpty() ? Stream.empty() : Stream.of(evidence.get(evidence.size() - 1));
        Stream<Integer> events = Stream.of(EventKind.PEAK_BEND, EventKind.RELEASE, EventKind.FORWARD_START)
                .map(k -> cast.stroke().event(k).frame());
        return Stream.concat(last, events)
                .filter(f -> f != null && stills.containsKey(f))
                .map(stills::get)
                .findFirst();
    }
}
