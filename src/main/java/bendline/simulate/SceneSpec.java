package bendline.simulate;

/**
 * What is in view besides angler, rod and rig.
 *
 * @param bank what closes the view behind
 * @param light the time of day and weather
 * @param reeds stems of reed at the water's edge that sway, 0 to 200
 * @param posts upright posts in water and bank, 0 to 12
 * @param restRods other rods in rests, 0 to 4
 * @param tree whether a tree with bare branches stands in view
 * @param glints how strongly the water glitters, 0 to 1
 */
public record SceneSpec(Bank bank, Light light, int reeds, int posts, int restRods, boolean tree, double glints) {

    /** What closes the view behind the angler. */
    public enum Bank {
        /** A low far shore, nearly all sky. */
        OPEN,
        /** A line of trees on the far shore. */
        TREES,
        /** A high wooded slope, the rod mostly against leaves. */
        WOODS
    }

    /** The light. */
    public enum Light {
        /** Blue sky, some clouds. */
        SUN,
        /** Grey sky. */
        OVERCAST,
        /** Low sun. */
        EVENING
    }

    /** Checks the ranges. */
    public SceneSpec {
        Ranges.check("reeds", reeds, 0, 200);
        Ranges.check("posts", posts, 0, 12);
        Ranges.check("rods in rests", restRods, 0, 4);
        Ranges.check("glints", glints, 0, 1);
    }

    /** Trees on the far shore under a blue sky, nothing that looks like a rod. */
    public static SceneSpec plain() {
        return new SceneSpec(Bank.TREES, Light.SUN, 0, 0, 0, false, 0.5);
    }
}
