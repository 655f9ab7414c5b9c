package bendline.simulate;

/** Where an angler's joints are for given hands; metres in the plane of the cast. */
record Limbs(
        double[] head,
        double[] neck,
        double[] shoulder,
        double[] hip,
        double[] nearElbow,
        double[] nearHand,
        double[] farElbow,
        double[] farHand,
        double[] frontKnee,
        double[] frontFoot,
        double[] backKnee,
        double[] backFoot) {

    /**
     * Joints for the upper hand (near the camera) on the grip and the lower one on the butt.
     *
     * @param m the moment
     * @param rod gives the distance of the hands
     * @param stature metres
     */
    static Limbs holding(Motion.Moment m, RodSpec rod, double stature) {
        double k = stature / 1.78;
        double[] grip = {m.handX(), m.handY()};
        double lower = rod.handleM() - 0.05;
        double[] butt = {grip[0] - lower * Math.cos(m.angle()), grip[1] - lower * Math.sin(m.angle())};
        double lean = Math.max(-0.16, Math.min(0.20, 0.42 * (0.6 * grip[0] + 0.4 * butt[0] - 0.22))) * k;
        double[] hip = {0.02 + 0.35 * lean, 0.93 * k};
        double[] shoulder = {0.02 + lean, 1.45 * k};
        double[] neck = {shoulder[0] + 0.015, shoulder[1] + 0.07 * k};
        double[] head = {shoulder[0] + 0.05, shoulder[1] + 0.20 * k};
        double[] farShoulder = {shoulder[0] + 0.05 * k, shoulder[1] - 0.01};
        return new Limbs(
                head,
                neck,
                shoulder,
                hip,
                elbow(shoulder, grip, 0.30 * k, 0.30 * k, 1),
                grip,
                elbow(farShoulder, butt, 0.30 * k, 0.30 * k, 1),
                butt,
                elbow(hip, new double[] {0.27 * k, 0.07}, 0.455 * k, 0.455 * k, -1),
                new double[] {0.27 * k, 0.07},
                elbow(hip, new double[] {-0.22 * k, 0.07}, 0.455 * k, 0.455 * k, -1),
                new double[] {-0.22 * k, 0.07});
    }

    /** The middle joint of a two-part limb; side +1 lies clockwise of the way from root to end. */
    private static double[] elbow(double[] root, double[] end, double first, double second, int side) {
        double dx = end[0] - root[0];
        double dy = end[1] - root[1];
        double d = Math.max(0.05, Math.hypot(dx, dy));
        double reach = Math.min(d, 0.999 * (first + second));
        double along = (first * first - second * second + reach * reach) / (2 * reach);
        double across = Math.sqrt(Math.max(0, first * first - along * along));
        double f = along / reach;
        return new double[] {root[0] + dx * f + side * dy / d * across, root[1] + dy * f - side * dx / d * across};
    }
}
