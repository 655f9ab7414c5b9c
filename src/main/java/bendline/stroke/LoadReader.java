package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.rod.BendReader;
import bendline.rod.BendReading;
import bendline.rod.Blank;
import bendline.rod.TracedArc;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What pulls on the tip in each frame, from two sides. The bend: the end force whose elastica, together with the blank's own weight,
 * inertia and the air's drag ({@link BlankMotion}), lies nearest to the arc; up to the release the line's direction, from tip to rig,
 * helps where it was seen. The rig: its mass times its acceleration ({@link RigPull}). Each says how unsure it is, and they are
 * weighed by that; where they contradict one another the answer is as unsure as the contradiction.
 */
final class LoadReader {

    /** How far a taut line may point beside the way from tip to rig, radians: its own sag and the reading. */
    private static final double LINE_SD = 0.06;

    /** A rig nearer to the tip than this share of the rod says nothing of a direction. */
    private static final double LEAST_LINE = 0.1;

    /** A shape that lies further off than this many uncertainties is none of this blank. */
    private static final double WORST_MISFIT = 6;

    /** A bend that speaks of a pull so many uncertainties from the rig's is another thing's, and so is its energy. */
    private static final double CONTRADICTION = 4;

    /** A blank whose length is off by more than this share of it is not this rod's alone. */
    private static final double FOREIGN = 0.05;

    /** What an energy read from one frame can be trusted to at best, joules. */
    private static final double LEAST_J = 0.02;

    /**
     * So many uncertainties between all that the rig says and all that the bend says, and what was told is taken to be less sure than
     * it said: of rods told as well as stated this widens one in seven.
     */
    private static final double MISFIT = 1.5;

    /** Of a stiff blank the rig's pull grows with the length told, the bend's falls with its square. */
    static final int LENGTH_POWER = 3;

    /** By how much what was told is known to contradict itself, as a power of e. */
    private final double doubt;

    private final List<RigAgainstBend.Pair> pairs = new ArrayList<>();
    private final @Nullable Blank blank;
    private final List<BendArc> arcs;
    private final RigPull rig;
    private final Given given;
    private final String basis;

    /**
     * What is common to all frames.
     *
     * @param lengthSd uncertainty of lengths in metres over their value
     * @param from forward start, real time
     * @param until the release, or the deepest bend where that was not seen: from then on no force is read, real time
     * @param step usual real time between frames
     */
    record Given(double lengthSd, double from, double until, double step) {}

    /** One frame's bend: with the load along the blank, without it, and what that load's own uncertainty comes to. */
    private record Seen(BendReading with, BendReading without, double inertiaSd) {

        double newtonsSd() {
            double along = without.known() ? BlankMotion.UNKNOWN * (without.newtons() - with.newtons()) : 0;
            return Math.hypot(with.readSd(), Math.hypot(along, Double.isFinite(inertiaSd) ? inertiaSd : 0));
        }
    }

    /** @param rod its blank may be unknown: then the rig alone tells */
    LoadReader(RodStiffness rod, List<BendArc> arcs, RigPull rig, Given given) {
        this(rod, arcs, rig, given, rod.doubt());
    }

    private LoadReader(RodStiffness rod, List<BendArc> arcs, RigPull rig, Given given, double doubt) {
        this.doubt = doubt;
        this.blank = rod.blank();
        this.arcs = arcs;
        this.rig = rig;
        this.given = given;
        this.basis = rod.basis();
    }

    LoadCurve read() {
        LoadTable out = new LoadTable(arcs);
        if (blank != null) {
            bends(out, blank);
            double off = RigAgainstBend.off(pairs);
            if (off > MISFIT * Math.hypot(force(), Math.hypot(RigPull.MASS_SD, given.lengthSd))) {
                return doubting(off).read();
            }
        }
        for (int i = 0; i < arcs.size(); i++) {
            int k = arcs.get(i).realSeconds() <= given.until
                    ? rig.at(arcs.get(i).realSeconds())
                    : -1;
            if (k >= 0) {
                double own = Math.hypot(Math.hypot(RigPull.MASS_SD, given.lengthSd), doubt / LENGTH_POWER)
                        * rig.newtons()[k];
                out.weigh(i, rig.newtons()[k], Math.hypot(rig.sd()[k], own));
            }
        }
        for (Jerks.Jerk j : Jerks.of(arcs, given.from, given.until, given.step)) {
            out.doubt(j.from(), j.to(), j.newtons());
        }
        return out.curve(basis, doubt);
    }

    /** The same with a stiffness that is no better known than by what the rig says against it. */
    private LoadReader doubting(double off) {
        Blank told = Objects.requireNonNull(blank);
        double sd = Math.min(2, Math.hypot(told.stiffnessRelativeSd(), off));
        String says = String.format(
                Locale.ROOT,
                "; but the rig's mass times its acceleration speaks of a pull off by a factor of %.1f from what the bend does: check the"
                        + " rod's length, what you said of its stiffness, and the rig's weight",
                Math.exp(off));
        return new LoadReader(
                new RodStiffness(told.withStiffness(told.stiffnessNm2(), sd), basis + says, doubt),
                arcs,
                rig,
                given,
                Math.max(doubt, off));
    }

    private void bends(LoadTable out, Blank b) {
        BlankMotion motion = new BlankMotion(b, arcs, given.step);
        BendReader reader = new BendReader(b);
        BendReading before = null;
        for (int i = 0; i < arcs.size(); i++) {
            boolean held = arcs.get(i).realSeconds() <= given.until;
            if (motion.strays(i) || arcs.get(i).misplaced() > FOREIGN * b.lengthM()) {
                continue;
            }
            before = held ? loaded(reader, motion, out, i, before) : free(reader, out, i, before);
        }
    }

    private @Nullable BendReading loaded(
            BendReader reader, BlankMotion motion, LoadTable out, int i, @Nullable BendReading before) {
        BendReading with = reader.read(arc(i), hints(i, motion.load(i), before));
        if (!fits(with)) {
            return before;
        }
        BendReading without = reader.read(arc(i), hints(i, List.of(), with));
        Seen seen = new Seen(with, without, motion.inertiaSd(i));
        double sd = Math.hypot(seen.newtonsSd(), force() * with.newtons());
        pair(i, with.newtons());
        if (contradicted(i, with.newtons(), sd)) {
            return before;
        }
        out.force(i, with, sd);
        out.energy(i, with, Math.max(LEAST_J, with.energyReadSd()), energy());
        out.withoutInertia(i, without.newtons());
        return with;
    }

    /** What does not change from frame to frame, stiffness and scale: a force is EI over a length squared, an energy EI over a length. */
    private double force() {
        return Math.hypot(stiffnessSd(), 2 * given.lengthSd);
    }

    private double energy() {
        return Math.hypot(stiffnessSd(), given.lengthSd);
    }

    private double stiffnessSd() {
        return blank == null ? 0 : blank.stiffnessRelativeSd();
    }

    private void pair(int i, double newtons) {
        int k = rig.at(arcs.get(i).realSeconds());
        if (k >= 0) {
            pairs.add(new RigAgainstBend.Pair(newtons, rig.newtons()[k], rig.sd()[k]));
        }
    }

    private boolean contradicted(int i, double newtons, double sd) {
        int k = rig.at(arcs.get(i).realSeconds());
        return k >= 0 && Math.abs(newtons - rig.newtons()[k]) > CONTRADICTION * Math.hypot(sd, rig.sd()[k]);
    }

    /** Nothing pulls on the tip of a rod whose line is gone: the bend is its own swing, of which only the energy is told. */
    private @Nullable BendReading free(BendReader reader, LoadTable out, int i, @Nullable BendReading before) {
        BendReading swing = reader.read(arc(i), new BendReader.Hints(List.of(), null, Double.NaN, before));
        if (fits(swing)) {
            out.energy(i, swing, Math.max(LEAST_J, swing.energyReadSd()), energy());
        }
        return null;
    }

    private static boolean fits(BendReading r) {
        return r.newtons() < RigPull.MOST_N && r.misfit() < WORST_MISFIT && r.energyReadSd() < r.energyJ() + 1;
    }

    private TracedArc arc(int i) {
        BendArc a = arcs.get(i);
        Polyline line = a.line();
        double length = blank == null ? line.length() : blank.lengthM();
        // A whole blank is as long as it is: what its picture is longer or shorter by is the reading's error.
        double stretch = a.whole() ? length / line.length() : 1;
        List<Point> points = new ArrayList<>();
        double[] along = new double[13];
        for (int k = 0; k < along.length; k++) {
            double s = line.length() * k / (along.length - 1);
            points.add(line.at(s));
            along[k] = stretch * s;
        }
        double off = Math.abs(stretch - 1) * length;
        return new TracedArc(points, along, a.pointSd(), 4 * a.pointSd() + 0.5 * off);
    }

    private BendReader.Hints hints(int i, List<Point> body, @Nullable BendReading near) {
        BendArc a = arcs.get(i);
        Point at = a.rig();
        if (at == null || !a.whole()) {
            return new BendReader.Hints(body, null, Double.NaN, near);
        }
        Point line = at.minus(a.line().last());
        double far = line.norm();
        if (far < LEAST_LINE * a.line().length()) {
            return new BendReader.Hints(body, null, Double.NaN, near);
        }
        return new BendReader.Hints(body, line.angle(), Math.hypot(LINE_SD, 2 * a.pointSd() / far), near);
    }
}
