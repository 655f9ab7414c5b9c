package bendline.stroke;

import bendline.rod.Blank;
import bendline.scene.Setup;
import java.util.EnumMap;
import java.util.Map;

/** What the bend of a stroke comes to, in single numbers. */
final class BendMeasures {

    /** What is left of the phone's angle in a direction, degrees. */
    private static final double CAMERA_DEG = 1;

    private final StrokeReader.Readings all;
    private final Bend bend;
    private final Map<Quantity, Measure> out = new EnumMap<>(Quantity.class);

    private BendMeasures(StrokeReader.Readings all, Bend bend) {
        this.all = all;
        this.bend = bend;
    }

    /**
     * @param bend what was read from the arcs
     * @param reach what this blank could be bent to with this rig
     */
    static Map<Quantity, Measure> of(StrokeReader.Readings all, Bend bend, BendReach reach) {
        BendMeasures m = new BendMeasures(all, bend);
        m.force();
        m.energy();
        m.place();
        m.after();
        m.out.putAll(reach.measures(all));
        return m.out;
    }

    /** The blank, its length and the ring that go into the reading. */
    static RodStiffness stiffness(StrokeReader.Readings all, Setup setup) {
        double free =
                all.scale().known() ? all.scale().metresPerPixel() * all.trace().freeLengthPx() : Double.NaN;
        Found ring = all.release().known()
                ? Ring.of(all.rod(), all.step(), all.release().value())
                : Found.nothing("needs the moment of release");
        return RodStiffness.of(free, setup.blank(), ring);
    }

    static Bend bend(StrokeReader.Readings all, RodStiffness rod, int firstFrame) {
        double free =
                all.scale().known() ? all.scale().metresPerPixel() * all.trace().freeLengthPx() : 1;
        CastPlane plane = CastPlane.of(all.trace(), free);
        java.util.List<BendArc> arcs = BendArcs.of(all, plane, firstFrame);
        Blank blank = rod.blank();
        if (arcs.isEmpty()) {
            return Bend.NONE;
        }
        LoadCurve load = blank == null
                ? LoadCurve.nothing(rod.basis())
                : new LoadReader(
                                rod,
                                blank,
                                arcs,
                                all.scale().relativeSd(),
                                all.release().known()
                                        ? all.release().value()
                                        : all.moments().deepestLoad(),
                                all.step())
                        .read();
        return new Bend(arcs, all.scale().known(), plane.basis(), load);
    }

    /** The entry of the stroke whose lower end is highest: a wild reading says so by its uncertainty and is passed over. */
    private int peak(double[] values, double[] sds) {
        LoadCurve c = bend.load();
        double from = all.moments().forwardStart();
        double to =
                all.release().known() ? all.release().value() : all.moments().deepestLoad();
        int best = -1;
        for (int i = 0; i < c.size(); i++) {
            boolean inside = c.realSeconds()[i] >= from - 1e-9 && c.realSeconds()[i] <= to + 1e-9;
            if (inside
                    && Double.isFinite(values[i] - sds[i])
                    && (best < 0 || values[i] - sds[i] > values[best] - sds[best])) {
                best = i;
            }
        }
        return best;
    }

    private String why() {
        return bend.load().known()
                ? "the blank was not followed from the forward start to the release"
                : bend.load().basis();
    }

    private void force() {
        LoadCurve c = bend.load();
        int at = peak(c.newtons(), c.newtonsSd());
        if (at < 0) {
            out.put(Quantity.PEAK_FORCE, Quantity.PEAK_FORCE.unknown(why()));
            out.put(Quantity.FORCE_ANGLE_DEG, Quantity.FORCE_ANGLE_DEG.unknown(why()));
            return;
        }
        double inertia = c.withoutInertiaN()[at] - c.newtons()[at];
        String basis = String.format(
                java.util.Locale.ROOT,
                "the end force whose bend lies nearest to the arc, the blank's inertia (here %.0f N of bend) taken out; %s; %s",
                Math.abs(inertia),
                c.basis(),
                bend.view());
        out.put(Quantity.PEAK_FORCE, Quantity.PEAK_FORCE.known(c.newtons()[at], c.newtonsSd()[at], basis));
        double degrees = Math.toDegrees(c.directionRad()[at]);
        out.put(
                Quantity.FORCE_ANGLE_DEG,
                Quantity.FORCE_ANGLE_DEG.known(
                        degrees < 0 ? degrees + 360 : degrees,
                        Math.hypot(CAMERA_DEG, Math.toDegrees(c.directionSd()[at])),
                        "direction of that force; 0 towards the water, 180 back"));
    }

    private void energy() {
        LoadCurve c = bend.load();
        int at = peak(c.energyJ(), c.energySd());
        if (at < 0) {
            out.put(Quantity.STORED_ENERGY, Quantity.STORED_ENERGY.unknown(why()));
            out.put(Quantity.ENERGY_LEFT, Quantity.ENERGY_LEFT.unknown(why()));
            return;
        }
        double most = c.energyJ()[at];
        out.put(
                Quantity.STORED_ENERGY,
                Quantity.STORED_ENERGY.known(
                        most, c.energySd()[at], "energy of the bend at its largest; " + c.basis()));
        double left = at(c, c.energyJ(), all.release().value());
        double leftSd = at(c, c.energySd(), all.release().value());
        // The stiffness falls out of the share; what is left is the reading and when the line went.
        double moved = Math.abs(
                at(c, c.energyJ(), all.release().value() + all.release().sd()) - left);
        double own = Math.hypot(0.5 * leftSd, moved);
        out.put(
                Quantity.ENERGY_LEFT,
                Double.isNaN(left)
                        ? Quantity.ENERGY_LEFT.unknown("the blank was not followed at the release")
                        : Quantity.ENERGY_LEFT.known(
                                left / most,
                                Math.max(0.02, Double.isNaN(own) ? leftSd / most : own / most),
                                "energy of the bend when the line goes over its largest; the share still in the rod"));
    }

    private static double at(LoadCurve c, double[] values, double time) {
        for (int i = 1; i < c.size(); i++) {
            double a = c.realSeconds()[i - 1];
            double b = c.realSeconds()[i];
            if (time >= a && time <= b) {
                return values[i - 1] + (values[i] - values[i - 1]) * (time - a) / (b - a);
            }
        }
        return Double.NaN;
    }

    /** Where it bends when it is bent most; where no stiffness is known, from the arc and the taper of a blank of that length. */
    private void place() {
        LoadCurve c = bend.load();
        double peak = all.moments().peakBend();
        double centre = c.known() ? at(c, c.bendCentre(), peak) : BendPlace.at(bend.arcs(), peak);
        out.put(
                Quantity.BEND_CENTRE,
                Double.isNaN(centre)
                        ? Quantity.BEND_CENTRE.unknown("the blank was not followed at its deepest bend")
                        : Quantity.BEND_CENTRE.known(
                                centre,
                                BendPlace.SD,
                                "mean place of the bend at peakBend, 0 at the hand and 1 at the tip; the taper is a usual one"));
    }

    private void after() {
        double straight = all.curves()
                .chord()
                .firstRise(0.995, all.moments().peakBend(), all.moments().peakBend() + 0.5);
        double[] draws = new double[all.draws().moments().size()];
        for (int k = 0; k < draws.length; k++) {
            draws[k] = all.draws().release()[k];
        }
        double sd = Math.hypot(Spread.of(draws), 0.25 * all.step());
        out.put(
                Quantity.STRAIGHT_AFTER,
                Double.isNaN(straight - all.release().value()) || Double.isNaN(sd)
                        ? Quantity.STRAIGHT_AFTER.unknown("the release or the straight rod was not seen")
                        : Quantity.STRAIGHT_AFTER.known(
                                straight - all.release().value(),
                                sd,
                                "release to rodStraight; negative where the rod was straight before"));
        Found damping = all.release().known()
                ? RingDamping.of(all.rod(), all.step(), all.release().value())
                : Found.nothing("needs the moment of release");
        out.put(Quantity.RING_DAMPING, damping.as(Quantity.RING_DAMPING));
    }
}
