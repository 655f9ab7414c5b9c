package bendline.technique;

import bendline.stroke.Measure;
import bendline.technique.Finding.Check;
import bendline.technique.Finding.State;

/**
 * Where a measure begins to speak for a fault.
 *
 * @param id name in the limits file, the finding's id and a word
 * @param measure id of the measure
 * @param worseAbove whether values above the limit speak for the fault
 * @param limit in the measure's unit
 * @param worst value at which the fault counts as complete
 * @param unit the measure's unit
 * @param reason why there
 * @param source where the number comes from
 */
public record Limit(
        String id,
        String measure,
        boolean worseAbove,
        double limit,
        double worst,
        String unit,
        String reason,
        String source) {

    /** Checks that the worst value lies on the fault's side. */
    public Limit {
        if (!(worseAbove ? worst > limit : worst < limit)) {
            throw new IllegalArgumentException("limit " + id + ": worst " + worst + " must lie "
                    + (worseAbove ? "above" : "below") + " the limit " + limit);
        }
    }

    /**
     * A measure held against this limit; a value nearer to it than its uncertainty decides nothing.
     *
     * @param sure by how many of its uncertainties it must lie beyond to speak for the fault
     */
    Check check(Measure m, double sure) {
        Double value = m.value();
        State verdict;
        if (value == null) {
            verdict = State.CANNOT_TELL;
        } else {
            double beyond = worseAbove ? value - limit : limit - value;
            verdict = beyond > sure * m.plusMinus()
                    ? State.FOUND
                    : beyond < -m.plusMinus() ? State.CLEAR : State.CANNOT_TELL;
        }
        return new Check(m, limit, worseAbove, verdict);
    }

    /** How far a value has gone from the limit to the worst, 0 to 1. */
    double severity(double value) {
        return Math.max(0, Math.min(1, (value - limit) / (worst - limit)));
    }

    Limit moved(double newLimit) {
        return new Limit(id, measure, worseAbove, newLimit, worst, unit, reason, source);
    }
}
