package bendline.technique;

import bendline.stroke.Measure;
import java.util.List;

/**
 * One fault looked for, whether or not it is there.
 *
 * @param id name in files, kebab-case
 * @param title words for people
 * @param state verdict
 * @param severity 0 to 1; 0 unless found
 * @param checks the numbers against their limits
 * @param evidenceFrames decoded frames that show it, or that the verdict rests on
 * @param brief what was seen, in few words without numbers; empty unless found
 * @param says what was seen, in plain words with the numbers
 * @param cost why it costs distance or control
 * @param drill what to practise
 */
public record Finding(
        String id,
        String title,
        State state,
        double severity,
        List<Check> checks,
        List<Integer> evidenceFrames,
        String brief,
        String says,
        String cost,
        String drill) {

    /** Verdict. */
    public enum State {
        FOUND("found"),
        CLEAR("clear"),
        CANNOT_TELL("cannot-tell");

        private final String id;

        State(String id) {
            this.id = id;
        }

        /** Name in files. */
        public String id() {
            return id;
        }
    }

    /**
     * A measure against its limit.
     *
     * @param measure the number
     * @param limit in the measure's unit
     * @param worseAbove whether values above the limit speak for the fault
     * @param verdict whether this number speaks for the fault, against it, or can't tell within its uncertainty
     */
    public record Check(Measure measure, double limit, boolean worseAbove, State verdict) {}

    /** Copies the lists. */
    public Finding {
        checks = List.copyOf(checks);
        evidenceFrames = List.copyOf(evidenceFrames);
    }
}
