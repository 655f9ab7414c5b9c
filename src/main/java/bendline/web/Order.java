package bendline.web;

import bendline.geometry.Point;
import bendline.scene.Mark;
import bendline.scene.Setup;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One line to a workbench: what to look at, where to put what comes of it, what counts.
 *
 * @param name what people call the clip
 * @param clip the file
 * @param followed the file for what was followed
 * @param place the folder for the report
 * @param frames the folder for pictures to step through
 * @param known lengths and mass of the kit, and what people corrected
 */
record Order(String name, Path clip, Path followed, Path place, Path frames, Setup known) {

    String line() {
        return String.join(
                "\t",
                name.replaceAll("\\s", " "),
                clip.toString(),
                followed.toString(),
                place.toString(),
                frames.toString(),
                number(known.rodLengthM()),
                number(known.freeLengthM()),
                number(known.dropM()),
                number(known.rigMassKg()),
                known.marks().stream().map(Order::mark).collect(Collectors.joining(";")));
    }

    static Order parse(String line) {
        String[] f = line.split("\t", -1);
        List<Mark> marks = new ArrayList<>();
        for (String m : f[9].split(";")) {
            if (!m.isEmpty()) {
                marks.add(mark(m));
            }
        }
        Setup known = new Setup(value(f[5]), value(f[6]), value(f[7]), value(f[8]), null, null, marks);
        return new Order(f[0], Path.of(f[1]), Path.of(f[2]), Path.of(f[3]), Path.of(f[4]), known);
    }

    private static String number(@Nullable Double value) {
        return value == null ? "" : Double.toString(value);
    }

    private static @Nullable Double value(String text) {
        return text.isEmpty() ? null : (Double) Double.parseDouble(text);
    }

    private static String mark(Mark m) {
        StringBuilder out = new StringBuilder(Double.toString(m.seconds()));
        m.places()
                .forEach((part, p) -> out.append(' ')
                        .append(part.name().toLowerCase(Locale.ROOT))
                        .append('=')
                        .append(p.x())
                        .append(',')
                        .append(p.y()));
        m.hidden()
                .forEach(part -> out.append(' ')
                        .append(part.name().toLowerCase(Locale.ROOT))
                        .append("=hidden"));
        m.moments().forEach(id -> out.append(' ').append(id).append("=moment"));
        return out.toString();
    }

    private static Mark mark(String text) {
        String[] words = text.split(" ");
        Map<Mark.Part, Point> places = new EnumMap<>(Mark.Part.class);
        Set<Mark.Part> hidden = new HashSet<>();
        Set<String> moments = new HashSet<>();
        for (int i = 1; i < words.length; i++) {
            String[] pair = words[i].split("=");
            if (pair[1].equals("moment")) {
                moments.add(pair[0]);
                continue;
            }
            Mark.Part part = Mark.Part.valueOf(pair[0].toUpperCase(Locale.ROOT));
            if (pair[1].equals("hidden")) {
                hidden.add(part);
            } else {
                String[] xy = pair[1].split(",");
                places.put(part, new Point(Double.parseDouble(xy[0]), Double.parseDouble(xy[1])));
            }
        }
        return new Mark(Double.parseDouble(words[0]), places, hidden, moments);
    }
}
