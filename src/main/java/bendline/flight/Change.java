package bendline.flight;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Something a person can change, and what it asks of them.
 *
 * @param id in files, kebab-case
 * @param label the step in words
 * @param kind whether it is done with kit, technique or the weather
 * @param effort what it asks
 * @param basis what it is taken to do to the throw
 * @param step the shot after it, given the shot before and two normal scores for what the step itself is unsure of
 */
public record Change(String id, String label, Kind kind, Effort effort, String basis, Step step) {

    /** What is changed. */
    public enum Kind {
        KIT("kit"),
        TECHNIQUE("technique"),
        WEATHER("weather");

        private final String id;

        Kind(String id) {
            this.id = id;
        }

        /** Name in files and in words. */
        public String id() {
            return id;
        }
    }

    /** What a step asks of a person, counted so that gains can be ranked by it; common practice, no source. */
    public enum Effort {
        MINUTES(1, "minutes on the bank"),
        EVENING(2, "an evening at home"),
        SESSIONS(3, "a few practice sessions"),
        WEEKS(4, "weeks of practice"),
        PURCHASE(5, "a purchase");

        private final int count;
        private final String words;

        Effort(int count, String words) {
            this.count = count;
            this.words = words;
        }

        /** How it counts against the others. */
        public int count() {
            return count;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }

    /** What a step makes of a shot. */
    @FunctionalInterface
    public interface Step {
        /** The shot after it. */
        Shot take(Shot before, double first, double second);
    }

    /** Mass that moves with the rig in the stroke: tip of the rod, line, part of the arms. No source; a factor of 1.6 either way. */
    private static final double MOVING_KG = 0.06;

    private static final double MOVING_SHARE = 0.5;

    private static final double HEAVIER_KG = 0.01;
    private static final double THINNER_M = 0.02e-3;
    private static final double THINNEST_M = 0.08e-3;
    private static final double LONGER_M = 0.3;
    private static final double USUAL_ROD_M = 3.9;
    private static final double FASTER_MPS = 2;
    private static final double CALMER_MPS = 2;

    /** How launch speed grows with the length of the rod: between not at all and in proportion. No source. */
    private static final double LENGTH_POWER = 0.5;

    private static final double LENGTH_POWER_SD = 0.3;

    /** Share of the launch energy that the blank gives back; coaching opinion says a fifth, no source. */
    private static final double SPRING = 0.2;

    private static final double SPRING_SD = 0.1;

    private static final double STIFFER = 1.1;
    private static final double LESS_LOSS = 0.8;

    /**
     * The steps open to a throw.
     *
     * @param rodM length of the rod, or null
     * @param best the angle at which it would go farthest
     * @param limits what is known of the kit's; a step past them is not offered
     */
    static List<Change> all(Shot shot, @Nullable Double rodM, BestAngle best, KitLimits.Kit limits) {
        List<Change> out = new ArrayList<>();
        if (KitLimits.carries(limits, shot.rig().massKg() + HEAVIER_KG)) {
            out.add(heavier());
        }
        if (shot.rig().tumble() > 0) {
            out.add(stem());
        }
        double thinner = shot.tackle().line().diameterM() - THINNER_M;
        // A line that nobody told is not held against the rules: what it would bring is told with what it takes.
        boolean allowed = limits.lineM() == null
                || KitLimits.thickEnough(thinner, shot.rig().massKg());
        if (KitLimits.leaderHolds(limits, shot.rig().massKg()) && allowed && thinner >= THINNEST_M) {
            out.add(thinner(shot.tackle().line().diameterM()));
        }
        out.add(lessLoss());
        out.add(longer(rodM == null ? USUAL_ROD_M : rodM));
        out.add(stiffer());
        out.add(faster());
        out.add(angle(shot.start().angleRad(), best.angleRad()));
        out.add(calmer());
        return out;
    }

    /** Speed of a rig of another mass from the same stroke: as much energy in the rig and what moves with it. */
    static double speedWith(double speed, double oldKg, double newKg, double z) {
        double moving = MOVING_KG * Math.exp(MOVING_SHARE * z);
        return speed * Math.sqrt((oldKg + moving) / (newKg + moving));
    }

    private static Change heavier() {
        return new Change(
                "heavier-strip",
                "10 g more weight on the feeder",
                Kind.KIT,
                Effort.MINUTES,
                "as much energy from the same stroke, so a little less speed; the same size. Check rod and leader first",
                (s, a, b) -> {
                    double kg = s.rig().massKg() + HEAVIER_KG;
                    double v = speedWith(s.start().speedMps(), s.rig().massKg(), kg, a);
                    return s.with(s.rig().withMass(kg)).with(s.start().atSpeed(v));
                });
    }

    private static Change stem() {
        return new Change(
                "stem",
                "a stem or tail that stops the tumbling",
                Kind.KIT,
                Effort.MINUTES,
                "the feeder flies end on instead of turning over and over",
                (s, a, b) -> s.with(s.rig().withStem()));
    }

    private static Change thinner(double diameterM) {
        return new Change(
                "thinner-line",
                String.format(
                        Locale.ROOT,
                        "line of %.2f mm instead of %.2f, behind a leader fit for the weight",
                        1e3 * (diameterM - THINNER_M),
                        1e3 * diameterM),
                Kind.KIT,
                Effort.EVENING,
                "less line to start and less of it in the air",
                (s, a, b) -> {
                    Line line = s.tackle().line();
                    double d = Math.max(0.6 * line.diameterM(), line.diameterM() - THINNER_M);
                    return s.with(s.tackle().withLine(line.withDiameter(d)));
                });
    }

    private static Change lessLoss() {
        return new Change(
                "smoother-run",
                "a fifth less loss: spool filled to the lip, sound rings, fresh line",
                Kind.KIT,
                Effort.EVENING,
                "how much of the loss that takes away is a guess",
                (s, a, b) -> s.with(s.tackle().withLoss(s.tackle().loss() * LESS_LOSS)));
    }

    private static Change longer(double rodM) {
        return new Change(
                "longer-rod",
                String.format(Locale.ROOT, "a rod of %.1f m instead of %.1f", rodM + LONGER_M, rodM),
                Kind.KIT,
                Effort.PURCHASE,
                "speed grows with the square root of the length, give or take, if you turn it as easily",
                (s, a, b) -> {
                    double power = LENGTH_POWER + LENGTH_POWER_SD * a;
                    double v = s.start().speedMps() * Math.pow(1 + LONGER_M / rodM, power);
                    return s.with(
                            new Shot.Start(v, s.start().angleRad(), s.start().heightM() + 0.8 * LONGER_M));
                });
    }

    private static Change stiffer() {
        return new Change(
                "stiffer-rod",
                "a rod a tenth stiffer, bent as deep",
                Kind.KIT,
                Effort.PURCHASE,
                "a tenth more of what the blank gives back, taken as a fifth of the energy",
                (s, a, b) -> {
                    double spring = Math.max(0, SPRING + SPRING_SD * a);
                    return s.with(s.start().atSpeed(s.start().speedMps() * Math.sqrt(1 + (STIFFER - 1) * spring)));
                });
    }

    private static Change faster() {
        return new Change(
                "faster",
                "2 m/s more launch speed",
                Kind.TECHNIQUE,
                Effort.WEEKS,
                "the same angle",
                (s, a, b) -> s.with(s.start().atSpeed(s.start().speedMps() + FASTER_MPS)));
    }

    private static Change angle(double nowRad, double bestRad) {
        return new Change(
                "best-angle",
                String.format(
                        Locale.ROOT,
                        "release at %.0f° instead of %.0f°",
                        Math.toDegrees(bestRad),
                        Math.toDegrees(nowRad)),
                Kind.TECHNIQUE,
                Effort.SESSIONS,
                "the same speed at the angle that is best for this rig, speed and wind",
                (s, a, b) -> s.with(s.start().atAngle(bestRad)));
    }

    private static Change calmer() {
        return new Change(
                "lull",
                "wait for a lull: 2 m/s less wind in the face",
                Kind.WEATHER,
                Effort.MINUTES,
                "the same throw",
                (s, a, b) -> s.with(
                        s.wind().with(s.wind().alongMps() + CALMER_MPS, s.wind().acrossMps())));
    }
}
