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
 * @param walkers people who walk by while the angler casts, before and behind, 0 to 3
 * @param neighbour whether another angler casts further along the bank
 * @param bushM height of bushes between the camera and the angler, metres, 0 to 1.6; 0 for none
 */
public record SceneSpec(
        Bank bank,
        Light light,
        int reeds,
        int posts,
        int restRods,
        boolean tree,
        double glints,
        int walkers,
        boolean neighbour,
        double bushM) {

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
        Ranges.check("walkers", walkers, 0, 3);
        Ranges.check("bush (m)", bushM, 0, 1.6);
    }

    /** A bank with things on it but nobody besides the angler, nothing before them. */
    public static SceneSpec alone(
            Bank bank, Light light, int reeds, int posts, int restRods, boolean tree, double glints) {
        return new SceneSpec(bank, light, reeds, posts, restRods, tree, glints, 0, false, 0);
    }

    /** The same with company. */
    public SceneSpec with(int people, boolean besideThem, double bushesM) {
        return new SceneSpec(bank, light, reeds, posts, restRods, tree, glints, people, besideThem, bushesM);
    }

    /** Trees on the far shore under a blue sky, nothing that looks like a rod. */
    public static SceneSpec plain() {
        return alone(Bank.TREES, Light.SUN, 0, 0, 0, false, 0.5);
    }
}
