package bendline.benchmark;

import bendline.stroke.Event;
import java.util.List;
import java.util.function.Predicate;

/**
 * Moments of casts against the truth.
 *
 * @param entries one a moment that truly happened
 */
public record EventScore(List<Entry> entries) {

    /** Nothing. */
    public static final EventScore NONE = new EventScore(List.of());

    /**
     * One moment.
     *
     * @param kind its name in files
     * @param errorFrames told minus true, in frames of the clip; NaN where it was not told
     * @param withinStated whether the error lies within the stated 68 % uncertainty
     */
    public record Entry(String kind, double errorFrames, boolean withinStated) {

        static Entry of(Event told, String kind, double trueSeconds, double step) {
            Double seconds = told.seconds();
            double error = seconds == null ? Double.NaN : (seconds - trueSeconds) / step;
            return new Entry(kind, error, Math.abs(error) * step <= told.plusMinusSeconds());
        }

        static Entry missed(String kind) {
            return new Entry(kind, Double.NaN, false);
        }

        boolean told() {
            return !Double.isNaN(errorFrames);
        }
    }

    /** Copies the list. */
    public EventScore {
        entries = List.copyOf(entries);
    }

    /** Absolute errors of the moments that were told, frames. */
    public Spread errors(Predicate<String> kinds) {
        return new Spread(entries.stream()
                .filter(e -> kinds.test(e.kind()))
                .mapToDouble(e -> Math.abs(e.errorFrames()))
                .toArray());
    }

    /** Of the moments that happened: told. */
    public Tally told(Predicate<String> kinds) {
        Tally out = Tally.NONE;
        for (Entry e : entries) {
            if (kinds.test(e.kind())) {
                out = out.plus(e.told());
            }
        }
        return out;
    }

    /** Of the moments told: within their stated uncertainty. */
    public Tally withinStated(Predicate<String> kinds) {
        Tally out = Tally.NONE;
        for (Entry e : entries) {
            if (kinds.test(e.kind()) && e.told()) {
                out = out.plus(e.withinStated());
            }
        }
        return out;
    }
}
