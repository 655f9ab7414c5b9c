package bendline.scene;

import bendline.geometry.Point;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What a user pointed at on one frame, in pixels of the upright picture, and which moments of the cast are on it. It is obeyed
 * exactly there, and the frames on both sides are looked at again from there.
 *
 * @param seconds clip time of the frame
 * @param places where parts are; parts that are not named are left to the program
 * @param hidden parts that can't be seen on this frame; none of them has a place
 * @param moments ids of the moments of the cast that are on this frame, as in {@code analysis.json}
 */
public record Mark(double seconds, Map<Part, Point> places, Set<Part> hidden, Set<String> moments) {

    /** What can be pointed at. */
    public enum Part {
        /** The upper hand on the rod. */
        GRIP,
        /** The tip of the rod. */
        TIP,
        /** The feeder or lead. */
        RIG
    }

    /** Checks that no part is both here and hidden. */
    public Mark {
        places = Map.copyOf(places);
        hidden = Set.copyOf(hidden);
        moments = Set.copyOf(moments);
        for (Part part : hidden) {
            if (places.containsKey(part)) {
                throw new IllegalArgumentException("the " + part.name().toLowerCase(Locale.ROOT)
                        + " can't be both marked and hidden at " + seconds + " s");
            }
        }
    }

    /** Parts only. */
    public Mark(double seconds, Map<Part, Point> places, Set<Part> hidden) {
        this(seconds, places, hidden, Set.of());
    }

    /** Grip and tip, either of them null where it was not pointed at. */
    public Mark(double seconds, @Nullable Point grip, @Nullable Point tip) {
        this(seconds, named(grip, tip), Set.of());
    }

    private static Map<Part, Point> named(@Nullable Point grip, @Nullable Point tip) {
        Map<Part, Point> places = new EnumMap<>(Part.class);
        if (grip != null) {
            places.put(Part.GRIP, grip);
        }
        if (tip != null) {
            places.put(Part.TIP, tip);
        }
        return places;
    }

    /** The upper hand on the rod, or null. */
    public @Nullable Point grip() {
        return places.get(Part.GRIP);
    }

    /** The rod tip, or null. */
    public @Nullable Point tip() {
        return places.get(Part.TIP);
    }

    /** The rig, or null. */
    public @Nullable Point rig() {
        return places.get(Part.RIG);
    }

    /** Whether something is said of any part. */
    public boolean tellsOfParts() {
        return !places.isEmpty() || !hidden.isEmpty();
    }

    /** Whether something is said of a part. */
    public boolean tells(Part part) {
        return places.containsKey(part) || hidden.contains(part);
    }

    /** Both in one, for the same frame; what the later one says of a part counts. */
    public Mark and(Mark later) {
        Map<Part, Point> both = new EnumMap<>(Part.class);
        Set<Part> gone = EnumSet.noneOf(Part.class);
        for (Mark mark : List.of(this, later)) {
            for (Part part : mark.hidden) {
                both.remove(part);
                gone.add(part);
            }
            mark.places.forEach((part, at) -> {
                both.put(part, at);
                gone.remove(part);
            });
        }
        Set<String> all = new TreeSet<>(moments);
        all.addAll(later.moments);
        return new Mark(seconds, both, gone, all);
    }
}
