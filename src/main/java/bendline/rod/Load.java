package bendline.rod;

import bendline.geometry.Point;
import java.util.List;

/**
 * What pulls on a blank. Directions are fixed in space: a load does not turn with the blank.
 *
 * @param tip force on the tip, newtons
 * @param tipMomentNm couple on the tip, N·m, positive where it turns the tip towards growing angles
 * @param body force per length at even steps from root to tip, N/m, straight between; empty for none, else at least two
 */
public record Load(Point tip, double tipMomentNm, List<Point> body) {

    /** Copies the list. */
    public Load {
        if (body.size() == 1) {
            throw new IllegalArgumentException("a load along the blank needs values at its root and its tip, got one");
        }
        body = List.copyOf(body);
    }

    /** No couple: a line can only pull. */
    public Load(Point tip, List<Point> body) {
        this(tip, 0, body);
    }

    /** A pull on the tip alone. */
    public static Load atTip(Point newtons) {
        return new Load(newtons, List.of());
    }

    /** Force per length at a share of the length. */
    Point bodyAt(double share) {
        if (body.isEmpty()) {
            return new Point(0, 0);
        }
        double at = Math.max(0, Math.min(1, share)) * (body.size() - 1);
        int i = Math.min(body.size() - 2, (int) at);
        return body.get(i).towards(body.get(i + 1), at - i);
    }
}
