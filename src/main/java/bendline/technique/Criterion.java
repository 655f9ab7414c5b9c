package bendline.technique;

import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.technique.Finding.Check;
import bendline.technique.Finding.State;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * One side of a fault that can be told by itself: one number, or several of which any will do.
 *
 * @param seen the words where it speaks for the fault
 * @param limits ids of the limits
 * @param must whether the fault can't be found without it
 * @param harmless tells strokes in which a missing number speaks against the fault
 */
record Criterion(String seen, List<String> limits, boolean must, Predicate<Stroke> harmless) {

    /** Uncertainties beyond the limit at which what a fault stands on speaks for it: of casts right at the limit one in six is read past one. */
    private static final double SURE = 2;

    static Criterion any(String seen, String... limits) {
        return new Criterion(seen, List.of(limits), false, s -> false);
    }

    Criterion mustHold() {
        return new Criterion(seen, limits, true, harmless);
    }

    Criterion harmlessWhere(Predicate<Stroke> when) {
        return new Criterion(seen, limits, must, when);
    }

    /**
     * What a stroke says to it.
     *
     * @param criterion this
     * @param state the verdict
     * @param checks the numbers against their limits
     * @param severity of the worst of them, 0 unless found
     */
    record Answer(Criterion criterion, State state, List<Check> checks, double severity) {}

    Answer ask(Stroke stroke, Limits all) {
        List<Check> checks = new ArrayList<>();
        double severity = 0;
        boolean found = false;
        boolean clear = true;
        for (String id : limits) {
            Limit limit = all.limit(id);
            Measure m = stroke.measure(limit.measure());
            Check c = limit.check(m, must ? SURE : 1);
            if (m.value() == null && harmless.test(stroke)) {
                c = new Check(m, c.limit(), c.worseAbove(), State.CLEAR);
            }
            checks.add(c);
            found |= c.verdict() == State.FOUND;
            clear &= c.verdict() == State.CLEAR;
            if (c.verdict() == State.FOUND && m.value() != null) {
                severity = Math.max(severity, limit.severity(m.value()));
            }
        }
        State state = found ? State.FOUND : clear ? State.CLEAR : State.CANNOT_TELL;
        return new Answer(this, state, checks, severity);
    }
}
