package bendline.stroke;

import bendline.scene.Setup;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the bend of a stroke comes to, in single numbers. */
final class BendMeasures {

    /** An energy whose uncertainty is a larger share of it is none: the truth may as well be twice or half of it. */
    private static final double UNTOLD = 0.6;

    /** By so much of the deepest compression, and so much at least, another is less deep. */
    private static final double SHALLOWER = 0.25;

    private static final double LEAST_SHALLOWER = 0.015;

    static final String HIDDEN = "the tip was not seen while the blank may have been bent deepest";

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
     * @param pull what the rig tells of the largest pull
     */
    static Map<Quantity, Measure> of(StrokeReader.Readings all, Bend bend, BendReach reach, MeanPull pull) {
        BendMeasures m = new BendMeasures(all, bend);
        m.out.putAll(PullMeasures.of(all, bend, pull));
        m.energy();
        m.place();
        m.after();
        m.out.putAll(reach.measures(all, bend));
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

    /** @param rigKg the rig as cast; null where it was not told */
    static Bend bend(StrokeReader.Readings all, RodStiffness rod, int firstFrame, @Nullable Double rigKg) {
        double free =
                all.scale().known() ? all.scale().metresPerPixel() * all.trace().freeLengthPx() : 1;
        CastPlane plane = all.plane().inMetres(free);
        List<BendArc> arcs = BendArcs.of(all, plane, free, firstFrame);
        if (arcs.isEmpty()) {
            return Bend.NONE;
        }
        RigPull rig = rigKg == null || !all.scale().known()
                ? RigPull.NONE
                : RigPull.of(RigPath.of(all, plane, firstFrame), rigKg, all.step());
        double until =
                all.release().known() ? all.release().value() : all.moments().deepestLoad();
        LoadReader.Given given =
                new LoadReader.Given(all.scale().relativeSd(), all.moments().forwardStart(), until, all.step());
        LoadCurve load = rod.blank() == null && rig.newtons().length == 0
                ? LoadCurve.nothing(rod.basis())
                : new LoadReader(rod, arcs, rig, given).read();
        return new Bend(arcs, all.scale().known(), plane.basis(), load);
    }

    private String why() {
        return bend.load().bendRead()
                ? "the blank was not followed from the forward start to the release"
                : bend.load().basis();
    }

    private void energy() {
        LoadCurve c = bend.load();
        int at = c.peak(c.energyJ(), c.energySd(), all);
        if (at < 0) {
            out.put(Quantity.STORED_ENERGY, Quantity.STORED_ENERGY.unknown(why()));
            out.put(Quantity.ENERGY_LEFT, Quantity.ENERGY_LEFT.unknown(why()));
            return;
        }
        double most = c.energyJ()[at];
        if (Double.isNaN(all.moments().peakBend())) {
            out.put(Quantity.STORED_ENERGY, Quantity.STORED_ENERGY.unknown(HIDDEN));
            out.put(Quantity.ENERGY_LEFT, Quantity.ENERGY_LEFT.unknown(HIDDEN));
            return;
        }
        if (c.energySd()[at] > UNTOLD * most || all.scale().doubtful()) {
            String from = all.scale().doubtful() ? all.scale().basis() : c.basis();
            String unsure = "known to no better than a factor of two or so: " + from;
            out.put(Quantity.STORED_ENERGY, Quantity.STORED_ENERGY.unknown(unsure));
            out.put(Quantity.ENERGY_LEFT, Quantity.ENERGY_LEFT.unknown(unsure));
            return;
        }
        if (shallower(at)) {
            String elsewhere = "the blank was not read where it was bent deepest: more than " + Math.round(most)
                    + " J; " + c.basis();
            out.put(Quantity.STORED_ENERGY, Quantity.STORED_ENERGY.unknown(elsewhere));
            out.put(Quantity.ENERGY_LEFT, Quantity.ENERGY_LEFT.unknown(elsewhere));
            return;
        }
        out.put(
                Quantity.STORED_ENERGY,
                Quantity.STORED_ENERGY.known(
                        most, c.energySd()[at], "energy of the bend at its largest; " + c.basis()));
        double release = all.release().value();
        double left = at(c, c.energyJ(), release);
        double leftSd = at(c, c.energySd(), release);
        // The stiffness falls out of the share; what is left is the reading and when the line went.
        double moved = Math.max(
                Math.abs(at(c, c.energyJ(), release + all.release().sd()) - left),
                Math.abs(at(c, c.energyJ(), release - all.release().sd()) - left));
        double own = Math.hypot(0.5 * leftSd, moved);
        out.put(
                Quantity.ENERGY_LEFT,
                Double.isNaN(left) || left > most + leftSd
                        ? Quantity.ENERGY_LEFT.unknown(
                                Double.isNaN(left)
                                        ? "the blank was not followed at the release"
                                        : "the energy's peak was not read: more is seen at the release")
                        : Quantity.ENERGY_LEFT.known(
                                left / most,
                                Math.max(0.02, Double.isNaN(own) ? leftSd / most : own / most),
                                "energy of the bend when the line goes over its largest; the share still in the rod"));
    }

    /** The energy goes with the compression, both being squares of the bend: one read of a shallower bend is not the largest. */
    private boolean shallower(int at) {
        double deepest = 1 - all.curves().chord().at(all.moments().peakBend());
        double there = BendDepth.compression(bend.arcs().get(at).line());
        return deepest - there > Math.max(LEAST_SHALLOWER, SHALLOWER * deepest);
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
        double centre = c.bendRead() ? at(c, c.bendCentre(), peak) : BendPlace.at(bend.arcs(), peak);
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
