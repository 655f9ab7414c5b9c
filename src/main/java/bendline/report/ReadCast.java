package bendline.report;

import bendline.compare.Cast;
import bendline.compare.Condition;
import bendline.compare.Wind;
import bendline.scene.Conditions;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Measure;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One cast as the files of an analysis tell of it.
 *
 * @param folder where they lie
 * @param clip name of the clip
 * @param number casts of a clip counted from 1
 * @param of how many the clip holds
 * @param castsTo which way it goes in the picture
 * @param picture what the clip is
 * @param setup what the user had told
 * @param events every kind, known or not
 * @param measures every measure, known or not
 * @param track frame by frame
 * @param knownAs what people call it; null where they go by its folder
 */
public record ReadCast(
        Path folder,
        String clip,
        int number,
        int of,
        Side castsTo,
        PictureFacts picture,
        Setup setup,
        Map<EventKind, Event> events,
        List<Measure> measures,
        CastTrack track,
        @Nullable String knownAs) {

    /**
     * What a clip is.
     *
     * @param width pixels
     * @param height pixels
     * @param slowMotionFactor clip time over real time
     * @param captureRateHz frames a second of real time; NaN where not known
     */
    public record PictureFacts(int width, int height, double slowMotionFactor, double captureRateHz) {}

    /** Copies the collections. */
    public ReadCast {
        events = Map.copyOf(events);
        measures = List.copyOf(measures);
    }

    /** Clip time of a moment; NaN where it can't be told. */
    double seconds(EventKind kind) {
        Event e = events.get(kind);
        return e == null || e.seconds() == null ? Double.NaN : e.seconds();
    }

    /** The same under the name by which people know it. */
    public ReadCast as(String name) {
        return new ReadCast(folder, clip, number, of, castsTo, picture, setup, events, measures, track, name);
    }

    /** A name for people: what they call it, else the folder, and the cast's number where the clip holds several. */
    public String name() {
        if (knownAs != null) {
            return knownAs;
        }
        String base = folder.getFileName() == null
                ? folder.toString()
                : folder.getFileName().toString();
        return of > 1 ? base + ", cast " + number : base;
    }

    /** What a comparison looks at, without a book. */
    public Cast cast() {
        return cast(name());
    }

    /** The same under another name. */
    public Cast cast(String name) {
        Conditions.Wind told = setup.conditions().wind();
        boolean whence = told.fromDeg() != null || told.speedMps() != null && told.speedMps() <= Wind.CALM_MPS;
        Wind wind = told.speedMps() == null || !whence
                ? null
                : new Wind(told.speedMps(), told.fromDeg() == null ? 0 : told.fromDeg() % 360);
        return cast(name, null, Map.of(), wind, measured());
    }

    /** How far it went, where that was told for the clip's only cast. */
    private Measure measured() {
        Conditions.Outcome told = setup.conditions().outcome();
        if (told.measuredM() == null || of > 1) {
            return Cast.noDistance();
        }
        double sd = told.measuredPlusMinusM() == null ? 0.02 * told.measuredM() : told.measuredPlusMinusM();
        return Cast.distance(told.measuredM(), sd, "as it was told for the analysis");
    }

    /**
     * What a comparison looks at.
     *
     * @param more conditions written down elsewhere, which go before what the analysis knows
     */
    public Cast cast(
            String name, Cast.@Nullable Turn turn, Map<Condition, String> more, @Nullable Wind wind, Measure distance) {
        EnumMap<Condition, String> all = new EnumMap<>(Condition.class);
        put(all, Condition.ROD, "%.2f m", setup.rodLengthM());
        put(all, Condition.DROP, "%.2f m", setup.dropM());
        put(all, Condition.RIG_MASS, "%.0f g", setup.rigMassKg() == null ? null : 1000 * setup.rigMassKg());
        put(all, Condition.FRAME_RATE, "%.0f frames a second", picture.captureRateHz());
        all.put(Condition.CAMERA_SIDE, castsTo == Side.RIGHT ? "casts go to the right" : "casts go to the left");
        all.put(Condition.PICTURE, picture.width() + " × " + picture.height());
        all.putAll(more);
        return new Cast(name, turn, all, wind, distance, measures, setup);
    }

    private static void put(Map<Condition, String> into, Condition c, String format, @Nullable Double value) {
        if (value != null && Double.isFinite(value)) {
            into.put(c, Words.of(format, value));
        }
    }
}
