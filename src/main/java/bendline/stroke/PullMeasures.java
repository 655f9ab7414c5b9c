package bendline.stroke;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The largest pull on the tip and where it pulls, or why they can't be told. It is a mean over {@link MeanPull#over}: a slack line that
 * comes tight pulls two or three times as hard for a hundredth of a second, which frames don't show and nobody feels as more than a
 * knock, but what it gives the rig they do show. The rig tells it where it was weighed and seen ({@link MeanPull}); else the bend does,
 * frame by frame, and then a jerk between them hides it.
 */
final class PullMeasures {

    /** A pull whose uncertainty is a larger share of it is not told. */
    private static final double UNTOLD = 1.0 / 3;

    /** The same where the rig tells it: places that leave so much open were mostly of another thing. */
    private static final double UNTOLD_BY_RIG = 0.2;

    /** While the rig was not seen for longer, over the time of the mean, a whole pull may have gone by. */
    private static final double MOST_GAP = 2;

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

    private static final double HALF = 0.5;

    private final StrokeReader.Readings all;
    private final Bend bend;
    private final double over;
    private final LoadCurve c;

    private PullMeasures(StrokeReader.Readings all, Bend bend) {
        this.all = all;
        this.bend = bend;
        this.over = MeanPull.over(all.step());
        this.c = bend.load().averaged(over, all.moments().forwardStart(), end(), StrokeTrends.bridge(all.step()));
    }

    private double end() {
        return all.release().known() ? all.release().value() : all.moments().deepestLoad();
    }

    /** @param rig what the rig alone tells */
    static Map<Quantity, Measure> of(StrokeReader.Readings all, Bend bend, MeanPull rig) {
        PullMeasures m = new PullMeasures(all, bend);
        double sd = m.asUnsureAsTheyContradict(rig);
        Optional<String> unsure = m.unseen(rig).or(() -> m.unsure(rig.newtons(), sd, UNTOLD_BY_RIG));
        return rig.known() && unsure.isEmpty()
                ? m.told(rig.newtons(), sd, rig.middle(), m.basis(rig))
                : m.byTheBend(rig.known() ? unsure : Optional.empty());
    }

    /**
     * The uncertainty of the rig's pull; what rig and bend together say frame by frame, over the same time, is another way to it, and
     * where the two contradict one another it is as unsure as that.
     */
    private double asUnsureAsTheyContradict(MeanPull rig) {
        double sd = rig.sdWith(all.scale().relativeSd(), c.doubt());
        int at = nearest(rig.middle(), c.newtons());
        double off = at < 0 ? 0 : Math.abs(rig.newtons() - c.newtons()[at]);
        return at >= 0 && off > Math.hypot(sd, c.newtonsSd()[at]) ? off : sd;
    }

    /** @param rig why the rig does not tell it; empty where there was none to ask */
    private Map<Quantity, Measure> byTheBend(Optional<String> rig) {
        int at = c.peak(c.newtons(), c.newtonsSd(), all);
        if (at < 0) {
            String why = c.known() ? "the blank was not followed from the forward start to the release" : c.basis();
            return unknown(rig.orElse(why));
        }
        double sd = c.newtonsSd()[at];
        return hidden(at)
                .or(() -> cutOff(at))
                .or(() -> unsure(c.newtons()[at], sd, UNTOLD))
                .or(() -> alone(at))
                .map(why -> unknown(rig.orElse(why)))
                .orElseGet(() -> told(c.newtons()[at], sd, c.realSeconds()[at], basis(at)));
    }

    private static Map<Quantity, Measure> unknown(String why) {
        Map<Quantity, Measure> out = new EnumMap<>(Quantity.class);
        out.put(Quantity.PEAK_FORCE, Quantity.PEAK_FORCE.unknown(why));
        out.put(Quantity.FORCE_ANGLE_DEG, Quantity.FORCE_ANGLE_DEG.unknown(why));
        return out;
    }

    /** A rig that was away for longer than the mean takes. */
    private Optional<String> unseen(MeanPull rig) {
        return rig.gap() > MOST_GAP * over
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the rig was not seen for %.0f ms of the forward stroke, and may have been pulled hardest then; at least %.0f N"
                                + " were seen",
                        1000 * rig.gap(),
                        Math.max(0, rig.newtons() - rig.sd())))
                : Optional.empty();
    }

    /** A jerk that frames don't show and that may have pulled harder than all they do show; the release ends what can be one. */
    private Optional<String> hidden(int at) {
        double to = end();
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

    /** A pull that is largest when the line goes, by the bend alone. */
    private Optional<String> cutOff(int at) {
        double left = end() - c.realSeconds()[at] - over / 2;
        return left - all.release().sd() < LAST_SECONDS
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the bend speaks of a pull that is largest when the line goes, where the blank straightens faster than frames show;"
                                + " at least %.0f N were seen",
                        Math.max(0, c.newtons()[at] - c.newtonsSd()[at])))
                : Optional.empty();
    }

    /** Two readings that contradict one another, or one of little worth: no number to act on. */
    private Optional<String> unsure(double newtons, double sd, double untold) {
        return sd > untold * newtons
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "what was seen allows anything from %.0f to %.0f N; %s",
                        Math.max(0, newtons - sd),
                        newtons + sd,
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

    private Map<Quantity, Measure> told(double newtons, double sd, double when, String basis) {
        Map<Quantity, Measure> out = new EnumMap<>(Quantity.class);
        out.put(Quantity.PEAK_FORCE, Quantity.PEAK_FORCE.known(newtons, sd, basis));
        int at = nearest(when, c.directionRad());
        double degrees = at < 0 ? Double.NaN : Math.toDegrees(c.directionRad()[at]);
        out.put(
                Quantity.FORCE_ANGLE_DEG,
                Double.isNaN(degrees)
                        ? Quantity.FORCE_ANGLE_DEG.unknown("the bend could not be read there")
                        : Quantity.FORCE_ANGLE_DEG.known(
                                degrees < 0 ? degrees + 360 : degrees,
                                Math.hypot(CAMERA_DEG, Math.toDegrees(c.directionSd()[at])),
                                "direction of that force in the middle of that time; 0 towards the water, 180 back"));
        return out;
    }

    /** The frame in which a number is told, nearest to a moment and within the mean about it; −1 for none. */
    private int nearest(double when, double[] told) {
        return IntStream.range(0, c.size())
                .filter(i -> Double.isFinite(told[i]) && Math.abs(c.realSeconds()[i] - when) <= over / 2)
                .boxed()
                .min(Comparator.comparingDouble(i -> Math.abs(c.realSeconds()[i] - when)))
                .orElse(-1);
    }

    private String basis(MeanPull rig) {
        return String.format(
                Locale.ROOT,
                "mean over %.0f ms: what the rig's momentum gains in that time over it, its weight taken out; a jerk counts with what it gives"
                        + " the rig, not with its height%s; %s; %s",
                1000 * over,
                longer(),
                c.basis(),
                bend.view());
    }

    /** Frames far apart show no shorter time. */
    private String longer() {
        return over > MeanPull.SECONDS
                ? String.format(Locale.ROOT, " (over %.0f ms it may be larger)", 1000 * MeanPull.SECONDS)
                : "";
    }

    private String basis(int at) {
        double inertia = c.withoutInertiaN()[at] - bend.load().newtons()[at];
        String bent = Double.isNaN(inertia)
                ? "the rig's mass times its acceleration"
                : String.format(
                        Locale.ROOT,
                        "the end force whose bend lies nearest to the arc, the blank's inertia and the air's drag (here %.0f N of bend)"
                                + " taken out; weighed, where the rig was seen and its mass told, with that mass times its"
                                + " acceleration",
                        Math.abs(inertia));
        return String.format(
                Locale.ROOT, "mean over %.0f ms%s: %s; %s; %s", 1000 * over, longer(), bent, c.basis(), bend.view());
    }
}
