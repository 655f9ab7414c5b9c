package bendline.benchmark;

import bendline.body.Joint;
import bendline.geometry.Point;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Where a person sees the joints of somebody filmed. Never used to tune anything.
 *
 * @param frames in order
 */
public record BodyLabels(List<Label> frames) {

    /**
     * One frame, displayed pixels, the centre of the first at (0.5, 0.5).
     *
     * @param frame decoded frames counted from 0
     * @param heightPx how tall the person would stand
     * @param joints those that can be seen
     */
    public record Label(int frame, double heightPx, Map<Joint, Point> joints) {}

    /**
     * Reads {@code /bendline/labels/body-NAME.csv}.
     *
     * @throws IOException if there is none of that name
     */
    public static BodyLabels read(String name) throws IOException {
        try (InputStream in = BodyLabels.class.getResourceAsStream("/bendline/labels/body-" + name + ".csv")) {
            if (in == null) {
                throw new IOException("there are no labels named " + name);
            }
            List<Label> out = new ArrayList<>();
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (!line.isBlank() && !line.startsWith("#") && !line.startsWith("frame")) {
                    out.add(label(line.strip().split(",", -1)));
                }
            }
            return new BodyLabels(out);
        }
    }

    private static Label label(String[] cells) {
        Map<Joint, Point> joints = new EnumMap<>(Joint.class);
        for (Joint j : Joint.values()) {
            int at = 2 + 2 * j.ordinal();
            if (!cells[at].isEmpty()) {
                joints.put(j, new Point(Double.parseDouble(cells[at]), Double.parseDouble(cells[at + 1])));
            }
        }
        return new Label(Integer.parseInt(cells[0]), Double.parseDouble(cells[1]), joints);
    }
}
