package bendline.stroke;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Writes down a stroke's measures, each with its uncertainty and what it rests on or why it cannot be told. */
final class MeasureBook {

    /** What a camera not quite square to the cast does to an angle, degrees. */
    private static final double CAMERA_DEG = 0.5;

    /** The same for a ratio of lengths: on simulated casts a thousandth for each degree, and phones taken to stand 8° off. */
    static final double CAMERA_RATIO = 0.008;

    private static final Set<Quantity> TILTED = EnumSet.of(
            Quantity.REARMOST_DEG,
            Quantity.SWEEP_DEG,
            Quantity.RELEASE_ANGLE_DEG,
            Quantity.HELD_ANGLE_DEG,
            Quantity.TIP_LAG_DEG);

    private final StrokeReader.Readings all;
    private final Map<Quantity, Measure> out = new EnumMap<>(Quantity.class);
    private final double depthSd;

    /**
     * @param bend what was read of the bend, known or not
     * @param depthSd as {@link BendDepth} gives it
     */
    MeasureBook(StrokeReader.Readings all, Map<Quantity, Measure> bend, double depthSd) {
        this.all = all;
        this.depthSd = depthSd;
        out.putAll(bend);
    }

    /** Every measure, in the order of the report. */
    List<Measure> measures() {
        numbers();
        path();
        speeds();
        rig();
        others();
        List<Measure> list = new ArrayList<>();
        for (Quantity q : Quantity.values()) {
            list.add(out.get(q));
        }
        return list;
    }

    private void numbers() {
        Map<Quantity, Double> nominal =
                Numbers.of(all.curves(), all.moments(), all.release().value());
        for (Map.Entry<Quantity, Double> e : nominal.entrySet()) {
            Quantity q = e.getKey();
            double[] draws =
                    all.draws().numbers().stream().mapToDouble(d -> d.get(q)).toArray();
            double sd = Math.hypot(Spread.of(draws), camera(q));
            boolean known = !Double.isNaN(e.getValue()) && !Double.isNaN(sd);
            boolean unsure = q == Quantity.COMPRESSION && Double.isNaN(depthSd) && !Double.isNaN(e.getValue());
            String why = unsure ? BendDepth.UNSURE : NumberBasis.why(q, all);
            out.put(q, known ? q.known(e.getValue(), sd, NumberBasis.of(q)) : q.unknown(why));
        }
    }

    private double camera(Quantity q) {
        if (TILTED.contains(q)) {
            return CAMERA_DEG;
        }
        return q == Quantity.COMPRESSION ? Math.hypot(CAMERA_RATIO, depthSd) : 0;
    }

    private void path() {
        double start = all.moments().forwardStart();
        if (!all.release().known() || Double.isNaN(start)) {
            for (Quantity q : List.of(Quantity.TIP_PATH_RADIUS, Quantity.TIP_PATH_ROUNDNESS, Quantity.TIP_PATH_DIP)) {
                out.put(q, q.unknown("needs the forward start and the release"));
            }
            return;
        }
        TipPath p = TipPath.of(
                all.rod(),
                all.trends(),
                all.trace().freeLengthPx(),
                start,
                all.release().value());
        out.put(Quantity.TIP_PATH_RADIUS, p.radius().as(Quantity.TIP_PATH_RADIUS));
        out.put(Quantity.TIP_PATH_ROUNDNESS, p.roundness().as(Quantity.TIP_PATH_ROUNDNESS));
        out.put(Quantity.TIP_PATH_DIP, p.dip().as(Quantity.TIP_PATH_DIP));
    }

    private void speeds() {
        Found px = TipSpeed.peak(
                all.trends(), all.moments().forwardStart(), all.release().value());
        out.put(Quantity.PEAK_TIP_SPEED_PX, px.as(Quantity.PEAK_TIP_SPEED_PX));
        out.put(Quantity.PEAK_TIP_SPEED, metres(px, Quantity.PEAK_TIP_SPEED));
        Launch launch = Launch.of(all);
        out.put(Quantity.LAUNCH_SPEED, metres(launch.speedPx(), Quantity.LAUNCH_SPEED));
        out.put(Quantity.LAUNCH_ANGLE_DEG, launch.angleDeg().as(Quantity.LAUNCH_ANGLE_DEG));
    }

    private void rig() {
        double start = all.moments().forwardStart();
        double half = Numbers.atSweep(all.curves(), all.moments(), all.release().value(), 0.5);
        RigStart r = RigStart.of(
                all.rod(),
                all.step(),
                start,
                Double.isNaN(half) ? all.moments().fastestTurn() : half,
                all.moments().fastestTurn());
        out.put(Quantity.RIG_SWING_DEG, r.swingDeg().as(Quantity.RIG_SWING_DEG));
        out.put(Quantity.RIG_AWAY, r.awayRate().as(Quantity.RIG_AWAY));
        out.put(Quantity.LINE_SLACK, r.slack().as(Quantity.LINE_SLACK));
        out.put(Quantity.DROP_M, metres(r.dropPx(), Quantity.DROP_M));
    }

    private void others() {
        Found ring = all.release().known()
                ? Ring.of(all.rod(), all.step(), all.release().value())
                : Found.nothing("needs the moment of release");
        out.put(Quantity.RING_HZ, ring.as(Quantity.RING_HZ));
        Found nod = all.nod();
        out.put(
                Quantity.FLIGHT_SECONDS,
                nod.known()
                        ? Quantity.FLIGHT_SECONDS.known(
                                nod.value() - all.release().value(),
                                Math.hypot(nod.sd(), all.release().sd()),
                                "release to the nod of the tip")
                        : Quantity.FLIGHT_SECONDS.unknown(nod.basis()));
        BodyReader.TOLD.forEach(q -> out.put(q, q.unknown("needs the angler's body")));
        out.put(
                Quantity.LAUNCH_AGAINST_BEST,
                Quantity.LAUNCH_AGAINST_BEST.unknown("needs the flight of this rig in this wind"));
        out.put(
                Quantity.LAUNCH_GIVEN_UP,
                Quantity.LAUNCH_GIVEN_UP.unknown("needs the flight of this rig in this wind"));
    }

    private Measure metres(Found px, Quantity q) {
        Scale s = all.scale();
        if (px.known() && !s.known()) {
            return q.unknown(s.basis());
        }
        Found m = px.times(s.metresPerPixel(), s.relativeSd());
        return m.known() ? q.known(m.value(), m.sd(), m.basis() + "; " + s.basis()) : q.unknown(px.basis());
    }
}
