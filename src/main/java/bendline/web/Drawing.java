package bendline.web;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** What somebody drew on a frame: a line of two points, or an angle of three, at the second. */
final class Drawing {

    private static final Pattern POINTS = Pattern.compile("-?\\d{1,5}(\\.\\d)?,-?\\d{1,5}(\\.\\d)?");

    private Drawing() {}

    /** Whether a text is a drawing, or nothing. */
    static boolean isOne(String text) {
        String[] points = text.strip().split(" ");
        boolean written =
                List.of(points).stream().allMatch(p -> POINTS.matcher(p).matches());
        return text.isEmpty() || (written && (points.length == 2 || points.length == 3));
    }

    /** In words: a line, or how wide the angle is; empty for nothing. */
    static String words(String text) {
        if (text.isEmpty()) {
            return "";
        }
        List<Point> p = points(text);
        return p.size() == 2 ? "with a line" : String.format(Locale.ROOT, "with an angle of %.0f°", degrees(p));
    }

    private static List<Point> points(String text) {
        List<Point> out = new ArrayList<>();
        for (String point : text.strip().split(" ")) {
            String[] xy = point.split(",");
            out.add(new Point(Double.parseDouble(xy[0]), Double.parseDouble(xy[1])));
        }
        return out;
    }

    private static double degrees(List<Point> p) {
        Point a = p.get(0).minus(p.get(1));
        Point b = p.get(2).minus(p.get(1));
        return Math.toDegrees(Math.abs(Math.atan2(a.cross(b), a.dot(b))));
    }
}
