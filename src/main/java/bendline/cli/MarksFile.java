package bendline.cli;

import bendline.geometry.Point;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import bendline.stroke.EventKind;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * Marks on many frames as a file: UTF-8, comma, header {@code seconds,part,x,y}, a line for each point. The part is grip, tip or
 * rig; where x and y are empty it can't be seen on that frame. Or it is the id of a moment of the cast, which is on that frame.
 */
final class MarksFile {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setHeader("seconds", "part", "x", "y")
            .setSkipHeaderRecord(true)
            .setIgnoreSurroundingSpaces(true)
            .get();

    private MarksFile() {}

    /**
     * Reads it.
     *
     * @throws IllegalArgumentException where a line can't be read, with a sentence for the user
     */
    static List<Mark> read(Path file) {
        try (Reader reader = Files.newBufferedReader(file)) {
            List<Mark> marks = new ArrayList<>();
            for (CSVRecord line : FORMAT.parse(reader)) {
                marks.add(mark(line, file));
            }
            return marks;
        } catch (IOException e) {
            throw new IllegalArgumentException(
                    "The marks in \"" + file + "\" can't be read: there is no such file.", e);
        }
    }

    private static Mark mark(CSVRecord line, Path file) {
        try {
            double seconds = Double.parseDouble(line.get("seconds"));
            boolean placed = !line.get("x").isEmpty() || !line.get("y").isEmpty();
            if (!placed && EventKind.of(line.get("part")).isPresent()) {
                return new Mark(seconds, Map.of(), Set.of(), Set.of(line.get("part")));
            }
            Part part = Part.valueOf(line.get("part").toUpperCase(Locale.ROOT));
            if (!placed) {
                return new Mark(seconds, Map.of(), Set.of(part));
            }
            Point at = new Point(Double.parseDouble(line.get("x")), Double.parseDouble(line.get("y")));
            return new Mark(seconds, Map.of(part, at), Set.of());
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "Line " + (line.getRecordNumber() + 1) + " of the marks in \"" + file
                            + "\" can't be read; write seconds,part,x,y with the part grip, tip or rig, for example"
                            + " 3.2,tip,812,220, and leave x and y empty for a part that can't be seen or a moment.",
                    e);
        }
    }
}
