package bendline.stroke;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The largest pull on the tip and where it pulls, or why they can't be told. */
final class PullMeasures {

    /** A pull whose uncertainty is a larger share of it is not told. */
    private static final double UNTOLD = 1.0 / 3;

    /** What is left of the phone's angle in a direction, degrees. */
    private static final double CAMERA_DEG = 1;

    /** A jerk of this share of the largest pull seen may have been the larger: its size is known to a factor of two. */
    private static final double MAY_BE_LARGER = 0.5;

    /** Frames farther apart show only the mean of the speed at which a jerk begins, real seconds. */
    private static final double JERK_STEP_SECONDS = 0.017;

    /** So shortly before the release the rig whips round the tip, real seconds. */
    private static final double LAST_SECONDS = 0.02;

    /** Share of the forward stroke in which the line must have been seen to tell that it was tight. */
    private static final double LEAST_WATCHED = 0.6;

    /** A pull that is largest so many frames before the release may still have grown. */
    private static final double AT_THE_END_FRAMES = 1.6;

    private static final double HALF = 0.5;

    /** Growth after the last frame, over what was seen, beyond which a number would say too much. */
    private static final double MOST_GROWTH = 0.3;

    private final StrokeReader.Readings all;
    private final Bend bend;
    private final LoadCurve c;

    private PullMeasures(StrokeReader.Readings all, Bend bend) {
        this.all = all;
        this.bend = bend;
        this.c = bend.load();
    }

    static Map<Quantity, Measure> of(StrokeReader.Readings all, Bend bend) {
        PullMeasures m = new PullMeasures(all, bend);
        int at = m.c.peak(m.c.newtons(), m.c.newtonsSd(), all);
        if (at < 0) {
            return unknown(
                    m.c.known() ? "the blank was not followed from the forward start to the release" : m.c.basis());
        }
        return m.hidden(at)
                .or(() -> m.cutOff(at))
                .or(() -> m.unsure(at))
                .or(() -> m.alone(at))
                .map(PullMeasures::unknown)
                .orElseGet(() -> m.told(at));
    }

    private static Map<Quantity, Measure> unknown(String why) {
        Map<Quantity, Measure> out = new EnumMap<>(Quantity.class);
        out.put(Quantity.PEAK_FORCE, Quantity.PEAK_FORCE.unknown(why));
        out.put(Quantity.FORCE_ANGLE_DEG, Quantity.FORCE_ANGLE_DEG.unknown(why));
        return out;
    }

    /** A bend that may have been deeper while the tip was not seen, and with it the pull. */
    private Optional<String> unseen() {
        return Double.isNaN(all.moments().peakBend()) ? Optional.of(BendMeasures.HIDDEN) : Optional.empty();
    }

    /** A jerk that frames don't show and that may have pulled harder than all they do show; the release ends what can be one. */
    private Optional<String> hidden(int at) {
        double to =
                all.release().known() ? all.release().value() : all.moments().deepestLoad();
        double watched = Jerks.watched(bend.arcs(), all.moments().forwardStart(), to, all.step());
        if (watched < LEAST_WATCHED) {
            return Optional.of(String.format(
                    Locale.ROOT,
                    "tip and rig were both seen in %.0f %% of the forward stroke only, so that a slack line that came tight with a jerk"
                            + " may have gone unseen; at least %.0f N were seen",
                    100 * watched,
                    Math.max(0, c.newtons()[at] - c.newtonsSd()[at])));
        }
        double larger = MAY_BE_LARGER * Math.min(1, JERK_STEP_SECONDS / all.step());
        return Jerks.of(bend.arcs(), all.moments().forwardStart(), to, all.step()).stream()
                .max(Comparator.comparingDouble(Jerks.Jerk::newtons))
                .filter(j -> bend.metric() && j.newtons() > larger * c.newtons()[at])
                .map(j -> String.format(
                        Locale.ROOT,
                        "the line was slack by %.0f %% of its drop and came tight with a jerk, rig and tip parting at %.0f m/s: that is"
                                + " over between two frames; at least %.0f N were seen, such a jerk comes to some %.0f N, half or twice"
                                + " that",
                        100 * j.slack(),
                        j.partingMps(),
                        Math.max(0, c.newtons()[at] - c.newtonsSd()[at]),
                        j.newtons()));
    }

    /** A pull that was still growing fast when the line went: how large it became lies between two frames. */
    private Optional<String> cutOff(int at) {
        double left = all.release().known() ? all.release().value() - c.realSeconds()[at] : Double.NaN;
        if (left - all.release().sd() < LAST_SECONDS) {
            return Optional.of(String.format(
                    Locale.ROOT,
                    "the pull is largest in the last %.0f ms before the line goes, where it grows and falls faster than frames show; at"
                            + " least %.0f N were seen",
                    1000 * LAST_SECONDS,
                    Math.max(0, c.newtons()[at] - c.newtonsSd()[at])));
        }
        double grown = stillGrowing(at);
        return grown > MOST_GROWTH * c.newtons()[at]
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the pull was still growing when the line went, by some %.0f N after the last frame; at least %.0f N were seen",
                        grown,
                        Math.max(0, c.newtons()[at] - c.newtonsSd()[at])))
                : Optional.empty();
    }

    /** Two readings that contradict one another, or one of little worth: no number to act on. */
    private Optional<String> unsure(int at) {
        return c.newtonsSd()[at] > UNTOLD * c.newtons()[at]
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "what was seen allows anything from %.0f to %.0f N; %s",
                        Math.max(0, c.newtons()[at] - c.newtonsSd()[at]),
                        c.newtons()[at] + c.newtonsSd()[at],
                        c.basis()))
                : Optional.empty();
    }

    /** A pull that the bend alone tells while the rig, where it was seen next before and after, pulled with less than half of it. */
    private Optional<String> alone(int at) {
        if (bend.arcs().get(at).rig() != null) {
            return Optional.empty();
        }
        double before = beside(at, -1);
        double after = beside(at, 1);
        double most = Double.isNaN(before) ? after : Double.isNaN(after) ? before : Math.max(before, after);
        return most < HALF * (c.newtons()[at] - c.newtonsSd()[at])
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the bend alone speaks of %.0f N, in frames that don't show the rig; just before and after it pulled with no more"
                                + " than %.0f N",
                        c.newtons()[at],
                        most))
                : Optional.empty();
    }

    /** Upper end of the pull in the nearest frame to one side that shows the rig; NaN for none. */
    private double beside(int at, int way) {
        int i = at + way;
        while (i >= 0 && i < c.size() && (bend.arcs().get(i).rig() == null || Double.isNaN(c.newtons()[i]))) {
            i += way;
        }
        return i >= 0 && i < c.size() ? c.newtons()[i] + c.newtonsSd()[i] : Double.NaN;
    }

    private Map<Quantity, Measure> told(int at) {
        Map<Quantity, Measure> out = new EnumMap<>(Quantity.class);
        out.put(
                Quantity.PEAK_FORCE,
                Quantity.PEAK_FORCE.known(c.newtons()[at], Math.hypot(c.newtonsSd()[at], stillGrowing(at)), basis(at)));
        double degrees = Math.toDegrees(c.directionRad()[at]);
        out.put(
                Quantity.FORCE_ANGLE_DEG,
                Double.isNaN(degrees)
                        ? Quantity.FORCE_ANGLE_DEG.unknown("the bend could not be read there")
                        : Quantity.FORCE_ANGLE_DEG.known(
                                degrees < 0 ? degrees + 360 : degrees,
                                Math.hypot(CAMERA_DEG, Math.toDegrees(c.directionSd()[at])),
                                "direction of that force; 0 towards the water, 180 back"));
        return out;
    }

    /** What the pull may have grown by between the last frame and the release. */
    private double stillGrowing(int at) {
        if (!all.release().known() || at == 0) {
            return 0;
        }
        double left = all.release().value() - c.realSeconds()[at];
        double slope = (c.newtons()[at] - c.newtons()[at - 1]) / (c.realSeconds()[at] - c.realSeconds()[at - 1]);
        return left > AT_THE_END_FRAMES * all.step() || !(slope > 0)
                ? 0
                : slope * (Math.max(0, left) + all.release().sd());
    }

    private String basis(int at) {
        double inertia = c.withoutInertiaN()[at] - c.newtons()[at];
        String bent = Double.isNaN(inertia)
                ? "the rig's mass times its acceleration"
                : String.format(
                        Locale.ROOT,
                        "the end force whose bend lies nearest to the arc, the blank's inertia and the air's drag (here %.0f N of bend)"
                                + " taken out; weighed, where the rig was seen and its mass told, with that mass times its"
                                + " acceleration",
                        Math.abs(inertia));
        return bent + "; " + c.basis() + "; " + bend.view();
    }
}
