package bendline.benchmark;

import bendline.geometry.Point;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where a person sees the rod on single frames of real footage. Never used to tune anything.
 *
 * @param frames in order
 */
public record HandLabels(List<Label> frames) {

    /**
     * One frame, displayed pixels, the centre of the first at (0.5, 0.5).
     *
     * @param frame decoded frames counted from 0
     * @param grip where the rod leaves the front hand
     * @param blank points of the blank between grip and tip, in order
     * @param tip the tip, or null where it is out of the picture or can't be told
     */
    public record Label(
            int frame,
            Point grip,
            List<Point> blank,
            @Nullable Point tip) {

        /** Copies the list. */
        public Label {
            blank = List.copyOf(blank);
        }
    }

    /** Copies the list. */
    public HandLabels {
        frames = List.copyOf(frames);
    }

    /**
     * Reads {@code /bendline/labels/NAME.csv}.
     *
     * @throws IOException if there is none of that name
     */
    public static HandLabels read(String name) throws IOException {
        try (InputStream in = HandLabels.class.getResourceAsStream("/bendline/labels/" + name + ".csv")) {
            if (in == null) {
                throw new IOException("there are no labels named " + name);
            }
            List<Label> out = new ArrayList<>();
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (!line.isBlank() && !line.startsWith("#") && !line.startsWith("frame")) {
                    out.add(label(line.strip().split(",", -1)));
                }
            }
            return new HandLabels(out);
        }
    }

    private static Label label(String[] cells) {
        List<Point> points = new ArrayList<>();
        for (int i = 1; i + 1 < cells.length && !cells[i].isEmpty(); i += 2) {
            points.add(new Point(Double.parseDouble(cells[i]), Double.parseDouble(cells[i + 1])));
        }
        boolean tip = !cells[cells.length - 1].isEmpty();
        return new Label(
                Integer.parseInt(cells[0]),
                points.get(0),
                points.subList(1, points.size() - (tip ? 1 : 0)),
                tip ? points.get(points.size() - 1) : null);
    }

    /** The labels of frames {@code from} to {@code to}. */
    public HandLabels between(int from, int to) {
        return new HandLabels(frames.stream()
                .filter(l -> l.frame() >= from && l.frame() <= to)
                .toList());
    }

    /**
     * The label of a frame.
     *
     * @throws IllegalArgumentException if there is none
     */
    public Label at(int frame) {
        return frames.stream()
                .filter(l -> l.frame() == frame)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("frame " + frame + " is not labelled"));
    }
}
