package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What is exactly true of a simulated clip. Pixels are those of the upright picture, origin top left, the centre of the
 * first pixel at (0.5, 0.5). Moments ({@code seconds}, events) are clip time; durations, rates and speeds are real time.
 *
 * @param format always {@value #FORMAT}
 * @param clip size, rate and length of the clip
 * @param planeToStill 3×3 matrix, row by row, from metres in the plane of the cast (towards the water from the middle
 *     between the feet, above ground, 1) to pixels of the still picture
 * @param frames one a frame, in order
 * @param casts one a cast that was made
 * @param scenario what the clip was made from
 */
public record Truth(
        String format, Clip clip, List<Double> planeToStill, List<Frame> frames, List<Cast> casts, Scenario scenario) {

    /** Name of the file format. */
    public static final String FORMAT = "bendline-truth/1";

    /** Copies the lists. */
    public Truth {
        planeToStill = List.copyOf(planeToStill);
        frames = List.copyOf(frames);
        casts = List.copyOf(casts);
    }

    /**
     * The clip as a player shows it.
     *
     * @param width upright, pixels
     * @param height upright, pixels
     * @param frames how many
     * @param storedFps frames per second of clip time
     * @param captureFps frames per second of real time
     * @param exposureSeconds real time each frame gathers light, centred on the frame's time
     * @param rotationDegrees clockwise turn tagged in the file
     */
    public record Clip(
            int width,
            int height,
            int frames,
            double storedFps,
            double captureFps,
            double exposureSeconds,
            int rotationDegrees) {}

    /**
     * One frame, in the middle of its exposure. Where nobody holds a rod all that concerns it is null.
     *
     * @param index from 0
     * @param seconds clip time
     * @param tip tip of the blank, pixels
     * @param tipInFrame whether it lies within the picture
     * @param tipBlur tip at the start and the end of the exposure, pixels
     * @param rig pixels; null once it lies in the water
     * @param rigVisible whether it lies within the picture
     * @param rigHeld whether the line is held, so that the rig hangs or swings on its drop
     * @param blank 25 points from butt cap to tip at equal steps of the rod's length, pixels
     * @param grip upper hand, pixels
     * @param pxPerMetreTip focal length over depth at the tip
     * @param pxPerMetreGrip focal length over depth at the upper hand
     * @param buttAngleDeg in the plane of the cast
     * @param chordRatio upper hand to tip over free length, in metres
     * @param tipSpeedMps real time
     * @param rigSpeedMps real time
     * @param linePullN pull of the line on the tip, newtons
     * @param elasticJ energy held in the blank's bend, joules
     * @param stillToPicture where pixels of the still picture lie in this frame: the camera's turning; near things shift a
     *     little more where the camera also moves, and every pixel given here includes that
     * @param joints the angler's nose, shoulders, elbows, wrists, hips, knees and ankles by name, left and right as the angler
     *     has them, pixels
     */
    public record Frame(
            int index,
            double seconds,
            @Nullable Point tip,
            boolean tipInFrame,
            @Nullable List<Point> tipBlur,
            @Nullable Point rig,
            boolean rigVisible,
            boolean rigHeld,
            @Nullable List<Point> blank,
            @Nullable Point grip,
            @Nullable Double pxPerMetreTip,
            @Nullable Double pxPerMetreGrip,
            @Nullable Double buttAngleDeg,
            @Nullable Double chordRatio,
            @Nullable Double tipSpeedMps,
            @Nullable Double rigSpeedMps,
            @Nullable Double linePullN,
            @Nullable Double elasticJ,
            Homography stillToPicture,
            @Nullable Map<String, Point> joints) {}

    /**
     * One cast.
     *
     * @param number from 1
     * @param events clip seconds by name: backswingStart, backswingEnd, rearmost, forwardStart, fastestTurn, peakBend,
     *     stop, release, rodStraight, tipLowest, clipNod
     * @param measures by name with the unit in it; real time
     * @param faults how plainly each fault was scripted, by finding id
     */
    public record Cast(
            int number, Map<String, Double> events, Map<String, Double> measures, Map<String, Severity> faults) {

        /** Copies the maps. */
        public Cast {
            events = Map.copyOf(events);
            measures = Map.copyOf(measures);
            faults = Map.copyOf(faults);
        }
    }

    /**
     * Reads a truth file.
     *
     * @throws IOException where the file is missing or not of this format
     */
    public static Truth read(Path json) throws IOException {
        return ScenarioFiles.readTruth(json);
    }

    /**
     * Writes this as a truth file.
     *
     * @throws IOException where the file cannot be written
     */
    public void write(Path json) throws IOException {
        ScenarioFiles.writeTruth(this, json);
    }
}
