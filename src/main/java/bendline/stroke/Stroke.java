package bendline.stroke;

import bendline.scene.Setup.Side;
import java.util.List;
import java.util.Map;

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
 */
public record Stroke(
        int number,
        Side castsTo,
        int firstFrame,
        int lastFrame,
        Kinematics kinematics,
        Map<EventKind, Event> events,
        List<Measure> measures,
        Bend bend) {

    /** A stroke whose bend was not read. */
    public Stroke(
            int number,
            Side castsTo,
            int firstFrame,
            int lastFrame,
            Kinematics kinematics,
            Map<EventKind, Event> events,
            List<Measure> measures) {
        this(number, castsTo, firstFrame, lastFrame, kinematics, events, measures, Bend.NONE);
    }

    /** Copies the collections. */
    public Stroke {
        events = Map.copyOf(events);
        measures = List.copyOf(measures);
    }

    /** An event; every kind is present. */
    public Event event(EventKind kind) {
        return events.get(kind);
    }

    /** The same with the measure of that id told otherwise, for what only a later stage can tell. */
    public Stroke with(Measure told) {
        List<Measure> all =
                measures.stream().map(m -> m.id().equals(told.id()) ? told : m).toList();
        return new Stroke(number, castsTo, firstFrame, lastFrame, kinematics, events, all);
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
