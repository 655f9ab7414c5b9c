package bendline.simulate;

import java.util.List;
import java.util.Locale;

/**
 * Everything that decides a clip. The same scenario gives the same clip.
 *
 * @param name for files: letters, digits, dot, dash and underscore
 * @param seed of everything drawn at random within the clip
 * @param seconds real time filmed, 0.5 to 120
 * @param leftToRight whether the cast goes to the right of the picture
 * @param angler whether anybody is there at all
 * @param statureM height of the angler, metres, 1.4 to 2.1
 * @param tipColour paint on the last hand's breadth of the tip
 * @param rod the rod
 * @param rig the rig
 * @param casts in order of time; empty for a clip without a cast
 * @param camera the phone
 * @param scene what else is in view
 */
public record Scenario(
        String name,
        long seed,
        double seconds,
        boolean leftToRight,
        boolean angler,
        double statureM,
        TipColour tipColour,
        RodSpec rod,
        RigSpec rig,
        List<CastScript> casts,
        CameraSpec camera,
        SceneSpec scene) {

    /** Real seconds between the starts of two casts in which the rod comes down and the rig is wound in. */
    static final double BETWEEN_CASTS = 5.5;

    /** Paint on the tip. */
    public enum TipColour {
        /** Dark like the blank. */
        PLAIN,
        /** White. */
        WHITE,
        /** Signal orange. */
        ORANGE,
        /** Yellow-green. */
        YELLOW
    }

    /** Checks the ranges and that the casts follow each other and fit into the clip. */
    public Scenario {
        if (!name.matches("[A-Za-z0-9._-]{1,80}")) {
            throw new IllegalArgumentException(
                    "scenario name \"" + name + "\" may hold letters, digits, dot, dash and underscore only");
        }
        Ranges.check("clip length (s)", seconds, 0.5, 120);
        Ranges.check("stature (m)", statureM, 1.4, 2.1);
        casts = List.copyOf(casts);
        double free = 0;
        for (int i = 0; i < casts.size(); i++) {
            CastScript cast = casts.get(i);
            if (cast.startSeconds() < free || (cast.putDown() && i < casts.size() - 1)) {
                throw new IllegalArgumentException(String.format(
                        Locale.ROOT,
                        "cast %d must start after %.1f s and no cast may follow a rod put down",
                        i + 1,
                        free));
            }
            free = cast.overSeconds() + BETWEEN_CASTS;
        }
        if (!angler && !casts.isEmpty()) {
            throw new IllegalArgumentException("there are casts but nobody to make them; set angler to true");
        }
    }

    /** Frames in the clip. */
    public int frames() {
        return (int) Math.max(2, Math.round(seconds * camera.captureFps()));
    }

    /** The same scenario under another name. */
    public Scenario named(String other) {
        return new Scenario(
                other, seed, seconds, leftToRight, angler, statureM, tipColour, rod, rig, casts, camera, scene);
    }

    /** The same scenario, filmed for another time in real seconds. */
    Scenario lasting(double other) {
        return new Scenario(
                name, seed, other, leftToRight, angler, statureM, tipColour, rod, rig, casts, camera, scene);
    }

    /** The same scenario with other casts. */
    Scenario withCasts(List<CastScript> other) {
        return new Scenario(
                name, seed, seconds, leftToRight, angler, statureM, tipColour, rod, rig, other, camera, scene);
    }
}
