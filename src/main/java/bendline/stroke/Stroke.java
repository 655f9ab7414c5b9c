package bendline.stroke;

import bendline.scene.Setup.Side;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One cast.
 *
 * @param number casts of a clip counted from 1
 * @param castsTo which way it goes in the picture
 * @param firstFrame first decoded frame that belongs to it
 * @param lastFrame last decoded frame that belongs to it
 * @param kinematics smoothed series over those frames
 * @param events every kind, known or not
 * @param measures every measure, known or not, in the order of the report
 * @param bend how the blank bent
 * @param body what the caster's body did, null where it was not looked at
 */
public record Stroke(
        int number,
        Side castsTo,
        int firstFrame,
        int lastFrame,
        Kinematics kinematics,
        Map<EventKind, Event> events,
        List<Measure> measures,
        Bend bend,
        @Nullable BodyMotion body) {

    /** Copies the collections. */
    public Stroke {
        events = Map.copyOf(events);
        measures = List.copyOf(measures);
    }

    /** A stroke of which only rod and rig were looked at, and its bend was not read. */
    public Stroke(
            int number,
            Side castsTo,
            int firstFrame,
            int lastFrame,
            Kinematics kinematics,
            Map<EventKind, Event> events,
            List<Measure> measures) {
        this(number, castsTo, firstFrame, lastFrame, kinematics, events, measures, Bend.NONE, null);
    }

    /** The same with what the body did; measures of the same ids take the place of those that are there. */
    Stroke with(BodyMotion motion, List<Measure> told) {
        return new Stroke(number, castsTo, firstFrame, lastFrame, kinematics, events, with(told), bend, motion);
    }

    /** The same with the measure of that id told otherwise, for what only a later stage can tell. */
    public Stroke with(Measure told) {
        return new Stroke(number, castsTo, firstFrame, lastFrame, kinematics, events, with(List.of(told)), bend, body);
    }

    private List<Measure> with(List<Measure> told) {
        return measures.stream()
                .map(m -> told.stream()
                        .filter(t -> t.id().equals(m.id()))
                        .findFirst()
                        .orElse(m))
                .toList();
    }

    /** An event; every kind is present. */
    public Event event(EventKind kind) {
        return events.get(kind);
    }

    /**
     * A measure by its id.
     *
     * @throws IllegalArgumentException if there is none of that name
     */
    public Measure measure(String id) {
        return measures.stream()
                .filter(m -> m.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no measure named " + id));
    }
}
