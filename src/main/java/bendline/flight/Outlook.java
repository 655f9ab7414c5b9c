package bendline.flight;

import bendline.flight.KitLimits.Caution;
import bendline.flight.KitLimits.Kit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the flight says of one throw: how far, how well aimed, what it would be in still air, and where more metres are.
 *
 * @param distanceM where it lands, level from under the rod tip, the clip left out
 * @param flightSeconds until it lands, the clip left out
 * @param bowM how far the middle of the line is then from the straight between tip and rig
 * @param spareM line that is out beyond that straight, which turns of the reel count too
 * @param reachesClip share of the drawn flights whose line reaches the clip
 * @param bestAngleDeg above level, for this rig, speed and wind
 * @param goodAngleDeg as its interval the angles that give up less than 3 % of the distance
 * @param againstBestDeg the launch angle less the best
 * @param givenUp share of the distance given up by the launch angle
 * @param stillAirM the measured throw, else the expected one, in still air
 * @param fitted the loss fitted to this throw, or null
 * @param gains what would make it go farther, best for its effort first
 * @param nextTen the first of them that together are worth ten metres, or null
 * @param kit what all this was worked out with
 * @param cautions limits that were looked at
 * @param notes what else should be known, one sentence each
 */
public record Outlook(
        Answer distanceM,
        Answer flightSeconds,
        Answer bowM,
        Answer spareM,
        Answer reachesClip,
        Answer bestAngleDeg,
        Answer goodAngleDeg,
        Answer againstBestDeg,
        Answer givenUp,
        Answer stillAirM,
        LossFit.@Nullable Fitted fitted,
        List<Gain> gains,
        Gain.@Nullable Together nextTen,
        List<Part> kit,
        List<Caution> cautions,
        List<String> notes) {

    /** A throw that gives up less of its distance by its angle is well aimed. */
    public static final double GOOD_SHARE = 0.03;

    private static final double TEN_M = 10;

    private static final int DRAWS = 96;

    /** The best angle takes ten flights to find. */
    private static final int ANGLE_DRAWS = 40;

    private static final String GUESSED = "the launch angle is not known";

    private static final Flyer FLYER = Flyer.quick();

    /** Copies the lists. */
    public Outlook {
        gains = List.copyOf(gains);
        kit = List.copyOf(kit);
        cautions = List.copyOf(cautions);
        notes = List.copyOf(notes);
    }

    /**
     * One number the flight was worked out with.
     *
     * @param id in files, lowerCamelCase
     * @param label for people
     * @param value in its unit, or null where it is not known
     * @param plusMinus 68 %; NaN where none is stated
     * @param unit for people
     * @param basis told, measured or assumed, and how
     */
    public record Part(String id, String label, @Nullable Double value, double plusMinus, String unit, String basis) {}

    /**
     * A throw to be worked out.
     *
     * @param throwing how it was thrown and how well that is known
     * @param speedKnown whether its speed was measured by itself; false where it was worked back from the distance
     * @param angleKnown whether its angle was; false where it is a guess
     * @param rodM length of the rod
     * @param measuredM distance measured, the clip not having held it
     * @param measuredPlusMinusM how well
     * @param fitted loss that was fitted to it
     * @param limits what is known for the limits
     * @param kit what it rests on
     * @param notes what else should be known
     */
    public record Question(
            DoubtfulShot throwing,
            boolean speedKnown,
            boolean angleKnown,
            @Nullable Double rodM,
            @Nullable Double measuredM,
            double measuredPlusMinusM,
            LossFit.@Nullable Fitted fitted,
            Kit limits,
            List<Part> kit,
            List<String> notes) {}

    /** Nothing but the kit and its limits, since something is missing. */
    public static Outlook cannotTell(String why, Kit limits, List<Part> kit, List<String> notes) {
        Answer m = Answer.unknown("m", why);
        Answer deg = Answer.unknown("deg", why);
        Answer share = Answer.unknown("1", why);
        return new Outlook(
                m,
                Answer.unknown("s", why),
                m,
                m,
                share,
                deg,
                deg,
                deg,
                share,
                m,
                null,
                List.of(),
                null,
                kit,
                KitLimits.of(limits),
                notes);
    }

    /** Works a throw out. */
    public static Outlook of(Question q) {
        DoubtfulShot s = q.throwing();
        double[][] draws = Draws.normal(DRAWS);
        Shot[] shots = new Shot[DRAWS];
        double[] far = new double[DRAWS];
        double[] seconds = new double[DRAWS];
        double[] bow = new double[DRAWS];
        double[] spare = new double[DRAWS];
        int reached = 0;
        for (int i = 0; i < DRAWS; i++) {
            shots[i] = s.drawn(draws[i]);
            Flight f = FLYER.fly(free(shots[i]));
            far[i] = f.distanceM();
            seconds[i] = f.seconds();
            bow[i] = f.bowM();
            spare[i] = f.spareM();
            reached += f.lineM(shots[i]) >= shots[i].tackle().clipM() ? 1 : 0;
        }
        String why = "the launch speed is not known by itself; it was worked back from the measured distance";
        Aim aim = Aim.of(s, draws);
        BestAngle best = BestAngle.of(s.shot());
        double[] good = best.range(s.shot(), GOOD_SHARE);
        Answer goodAngle = new Answer(
                Math.toDegrees(best.angleRad()),
                Math.toDegrees(good[0]),
                Math.toDegrees(good[1]),
                "deg",
                "less than 3 % of the distance is given up between the two");
        List<Gain> gains = Gain.ranked(s, Change.all(s.shot(), q.rodM(), best, q.limits()));
        return new Outlook(
                q.speedKnown()
                        ? Answer.of(far, "m", "flown from the launch, drawn within what is known of it")
                        : Answer.unknown("m", why),
                Answer.of(seconds, "s", "of the same flights"),
                Answer.of(
                        bow, "m", "middle of the line off the straight between tip and rig, before it is drawn tight"),
                Answer.of(spare, "m", "line out beyond the straight way; turns of the reel count it too"),
                clip(s.shot(), (double) reached / DRAWS),
                aim.best(),
                goodAngle,
                q.angleKnown() ? aim.against() : Answer.unknown("deg", GUESSED),
                q.angleKnown() ? aim.givenUp() : Answer.unknown("1", GUESSED),
                stillAir(q, shots),
                q.fitted(),
                gains,
                Gain.towards(s, gains, TEN_M),
                q.kit(),
                KitLimits.of(q.limits()),
                q.notes());
    }

    private static Shot free(Shot shot) {
        return shot.with(shot.tackle().clippedAt(Double.POSITIVE_INFINITY));
    }

    private static Answer clip(Shot shot, double share) {
        return Double.isInfinite(shot.tackle().clipM())
                ? Answer.unknown("1", "no clip was told")
                : new Answer(share, share, share, "1", "share of the drawn flights whose line comes tight on the clip");
    }

    private static Answer stillAir(Question q, Shot[] shots) {
        Double measured = q.measuredM();
        if (measured != null) {
            return StillAir.of(q.throwing(), measured, q.measuredPlusMinusM());
        }
        double[] out = new double[shots.length];
        for (int i = 0; i < shots.length; i++) {
            out[i] = FLYER.fly(free(shots[i]).with(Wind.NONE)).distanceM();
        }
        return Answer.of(out, "m", "the expected throw, flown without wind");
    }

    /** How well it was aimed. */
    private record Aim(Answer best, Answer against, Answer givenUp) {

        static Aim of(DoubtfulShot s, double[][] draws) {
            List<double[]> rows = new ArrayList<>();
            for (int i = 0; i < ANGLE_DRAWS; i++) {
                Shot drawn = s.drawn(draws[i]);
                BestAngle b = BestAngle.of(drawn);
                double here = FLYER.fly(free(drawn)).distanceM();
                rows.add(new double[] {
                    Math.toDegrees(b.angleRad()),
                    Math.toDegrees(drawn.start().angleRad() - b.angleRad()),
                    Math.max(0, 1 - here / b.distanceM())
                });
            }
            String basis =
                    "the launch angle against the one at which this rig goes farthest at this speed in this wind";
            return new Aim(
                    Answer.of(column(rows, 0), "deg", "flown at every angle with the same speed"),
                    Answer.of(column(rows, 1), "deg", basis),
                    Answer.of(column(rows, 2), "1", "distance at the launch angle against that at the best"));
        }

        private static double[] column(List<double[]> rows, int at) {
            return rows.stream().mapToDouble(r -> r[at]).toArray();
        }
    }

    /** A gain by its change's id, if it was looked at. */
    public @Nullable Gain gain(String id) {
        return gains.stream()
                .filter(g -> g.change().id().equals(id))
                .findFirst()
                .orElse(null);
    }
}
