package bendline.compare;

import bendline.scene.Setup;
import bendline.stroke.Measure;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One cast as far as a comparison looks at it.
 *
 * @param name what a person knows it by, unique within a comparison
 * @param turn when it was made among the others; null where that is not known
 * @param conditions what is known of what surrounded it, in words; absent where not known
 * @param wind null where not known
 * @param distance how far the rig flew, measured at the water; a measure without a value where it was not measured
 * @param measures every measure of its analysis, known or not
 * @param setup what is known of rod, rig and line, for the flight
 */
public record Cast(
        String name,
        @Nullable Turn turn,
        Map<Condition, String> conditions,
        @Nullable Wind wind,
        Measure distance,
        List<Measure> measures,
        Setup setup) {

    /** Id of the measured distance among the measures of a comparison. */
    public static final String DISTANCE = "distance";

    /**
     * When a cast was made.
     *
     * @param session which session, in words
     * @param number counted from 1 within the session
     */
    public record Turn(String session, int number) {}

    /** Copies the collections. */
    public Cast {
        EnumMap<Condition, String> copy = new EnumMap<>(Condition.class);
        copy.putAll(conditions);
        conditions = Map.copyOf(copy);
        measures = List.copyOf(measures);
    }

    /** A cast of whose kit nothing is known. */
    public Cast(
            String name,
            @Nullable Turn turn,
            Map<Condition, String> conditions,
            @Nullable Wind wind,
            Measure distance,
            List<Measure> measures) {
        this(name, turn, conditions, wind, distance, measures, Setup.NONE);
    }

    /** A distance that nobody measured. */
    public static Measure noDistance() {
        return Measure.unknown(DISTANCE, "distance", "m", "nobody measured it");
    }

    /** A measured distance. */
    public static Measure distance(double metres, double plusMinus, String how) {
        return new Measure(DISTANCE, "distance", "m", metres, plusMinus, how);
    }

    /** A measure by its id, where the analysis has it. */
    public Optional<Measure> measure(String id) {
        return measures.stream().filter(m -> m.id().equals(id)).findFirst();
    }

    /** The same with another distance. */
    public Cast withDistance(Measure other) {
        return new Cast(name, turn, conditions, wind, other, measures, setup);
    }

    /** The same with what is known of rod, rig and line. */
    public Cast withSetup(Setup other) {
        return new Cast(name, turn, conditions, wind, distance, measures, other);
    }
}
