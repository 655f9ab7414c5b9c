package bendline.stroke;

/** How fast the tip goes. */
final class TipSpeed {

    private TipSpeed() {}

    /** The fastest tip between two real times, pixels per real second. */
    static Found peak(StrokeTrends trends, double from, double to) {
        double best = Double.NaN;
        double sd = Double.NaN;
        for (int i = 0; i < trends.tipX().times().length; i++) {
            double t = trends.tipX().times()[i];
            double vx = trends.tipX().rates()[i];
            double vy = trends.tipY().rates()[i];
            double v = Math.hypot(vx, vy);
            if (t >= from && t <= to && !(v <= best) && !Double.isNaN(v)) {
                best = v;
                sd = Math.hypot(
                                vx * trends.tipX().rateSds()[i],
                                vy * trends.tipY().rateSds()[i])
                        / Math.max(v, 1e-9);
            }
        }
        return Double.isNaN(best)
                ? Found.nothing("the tip was not followed from forward start to release")
                : new Found(best, sd, "speed of the smoothed tip, forwardStart to release");
    }
}
