package bendline.analysis;

import bendline.flight.Doubt;
import bendline.flight.DoubtfulShot;
import bendline.flight.Flight;
import bendline.flight.Flyer;
import bendline.flight.LossFit;
import bendline.flight.Outlook;
import bendline.flight.Outlook.Question;
import bendline.flight.Rig;
import bendline.flight.Shot;
import bendline.flight.StillAir;
import bendline.scene.Conditions;
import bendline.scene.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** From what is known of a launch and of the kit to what the flight says of it. */
public final class Reach {

    /** An angle nobody measured: what most casts leave at; common practice, no source. */
    private static final double USUAL_ANGLE_DEG = 38;

    private static final double USUAL_ANGLE_SD = 6;

    /** Upper hand above the water at the release, m: head high on a low bank; common practice, no source. */
    private static final double HAND_M = 1.9;

    private static final double USUAL_FREE_M = 3.2;
    private static final double USUAL_BUTT_DEG = 60;
    private static final double HEIGHT_SD = 0.5;
    private static final double TOLD_HEIGHT_SD = 0.15;

    /** A distance paced or counted in turns, as a share of it. */
    private static final double MEASURED_SHARE = 0.02;

    /** A rig that lands so near to the clip's length may have been held by it: a line out is longer than the way, by its bow. */
    private static final double AT_CLIP = 0.9;

    /** Nobody throws so fast: the longest casts on record, 282 m with 150 g, need some 60 m/s. */
    private static final double FASTEST_MPS = 75;

    private final Setup setup;
    private final Conditions told;
    private final Launched launched;
    private final KitReader kit;
    private final List<String> notes = new ArrayList<>();

    private Reach(Setup setup, Launched launched) {
        this.setup = setup;
        this.told = setup.conditions();
        this.launched = launched;
        this.kit = new KitReader(setup);
    }

    /** Works out a throw; what is missing is assumed and said to be, or the answer is that it can't be told. */
    public static Outlook of(Setup setup, Launched launched) {
        return new Reach(setup, launched).work();
    }

    /**
     * The throw as a flight, with its doubts.
     *
     * @throws IllegalArgumentException where mass or speed are not known
     */
    public static DoubtfulShot throwing(Setup setup, Launched launched) {
        Reach r = new Reach(setup, launched);
        Double mass = setup.castMassKg();
        Double speed = launched.speedMps();
        if (mass == null || speed == null) {
            throw new IllegalArgumentException("a flight needs the rig's weight and its launch speed");
        }
        return r.shot(mass, speed);
    }

    private Outlook work() {
        Double mass = setup.castMassKg();
        if (mass == null) {
            return Outlook.cannotTell(
                    "needs the weight of the rig as cast: give --rig-mass, or --empty-mass and --bait",
                    kit.limits(null),
                    kit.parts(),
                    notes);
        }
        Double speed = launched.speedMps();
        if (told.outcome().measuredM() != null && free() == null) {
            notes.add(
                    "The measured distance is so near to the clip that the clip may have ended it; so it says nothing of the loss"
                            + " and is not put into still air.");
        }
        if (speed != null && speed > FASTEST_MPS) {
            notes.add(words(
                    "A launch at %.0f m/s is faster than anybody throws; check the lengths and the slow-motion factor.",
                    speed));
        }
        if (speed == null && free() == null) {
            kit.rig(mass);
            kit.line();
            kit.wind();
            return Outlook.cannotTell(launched.speedBasis(), kit.limits(null), kit.parts(), notes);
        }
        return speed == null ? workedBack(mass) : known(mass, speed);
    }

    private Outlook known(double mass, double speed) {
        DoubtfulShot shot = shot(mass, speed);
        LossFit.@Nullable Fitted fitted = fitted(shot);
        if (fitted != null) {
            shot = withLoss(shot, fitted);
            kit.loss(fitted.loss(), fitted.plusMinus(), fitted.says());
        } else {
            LossFit.Fitted assumed = kit.toldLoss();
            kit.loss(assumed.loss(), assumed.plusMinus(), assumed.says());
        }
        return Outlook.of(question(shot, true, fitted));
    }

    /** The speed is worked back from the distance, with the loss as it is told or assumed. */
    private Outlook workedBack(double mass) {
        double distance = free();
        DoubtfulShot first = shot(mass, 40);
        double speed = StillAir.speed(first.shot(), distance);
        if (Double.isNaN(speed)) {
            return Outlook.cannotTell(
                    words("no launch speed takes this rig %.0f m at this angle in this wind", distance),
                    kit.limits(null),
                    kit.parts(),
                    notes);
        }
        LossFit.Fitted assumed = kit.toldLoss();
        kit.loss(assumed.loss(), assumed.plusMinus(), assumed.says());
        notes.add(words(
                "To go %.0f m the rig must have left at about %.0f m/s, if the loss is as assumed. Give the launch speed, or a clip"
                        + " with a length in metres, and the loss of your kit can be fitted instead.",
                distance, speed));
        DoubtfulShot shot = first.with(first.shot().with(first.shot().start().atSpeed(speed)));
        kit.parts()
                .add(new Outlook.Part(
                        "launchSpeed",
                        "launch speed",
                        speed,
                        Double.NaN,
                        "m/s",
                        "worked back from the measured distance"));
        return Outlook.of(question(shot, false, null));
    }

    private Question question(DoubtfulShot shot, boolean speedKnown, LossFit.@Nullable Fitted fitted) {
        Double measured = free();
        Flight flight = new Flyer().fly(shot.shot());
        return new Question(
                shot,
                speedKnown,
                launched.angleDeg() != null,
                setup.rodLengthM(),
                measured,
                measured == null ? Double.NaN : measuredSd(measured),
                fitted,
                kit.limits(flight.clipped() ? flight.peakPullN() : null),
                kit.parts(),
                notes);
    }

    /** The measured distance, if the clip did not hold the rig. */
    private @Nullable Double free() {
        Double measured = told.outcome().measuredM();
        Double clip = told.outcome().clipM();
        if (measured == null || clip == null || measured < AT_CLIP * clip) {
            return measured;
        }
        return null;
    }

    private double measuredSd(double measured) {
        Double sd = told.outcome().measuredPlusMinusM();
        return sd == null ? MEASURED_SHARE * measured : sd;
    }

    private LossFit.@Nullable Fitted fitted(DoubtfulShot shot) {
        Double measured = free();
        if (told.tackle().loss() != null) {
            return null;
        }
        LossFit.@Nullable Known cast = null;
        if (measured != null) {
            cast = new LossFit.Known(shot, LossFit.Kind.DISTANCE, measured, measuredSd(measured));
        } else if (told.outcome().clipM() != null && launched.clipSeconds() != null) {
            cast = new LossFit.Known(
                    shot, LossFit.Kind.SECONDS_TO_CLIP, launched.clipSeconds(), launched.clipSecondsPlusMinus());
        }
        if (cast == null) {
            return null;
        }
        try {
            return LossFit.fit(List.of(cast));
        } catch (IllegalArgumentException e) {
            notes.add("The loss could not be fitted: " + e.getMessage() + ".");
            return null;
        }
    }

    private static DoubtfulShot withLoss(DoubtfulShot s, LossFit.Fitted f) {
        double share = f.plusMinus() / Math.max(0.05, f.loss());
        return new DoubtfulShot(
                s.shot().with(s.shot().tackle().withLoss(f.loss())), s.doubt().withFittedLoss(share));
    }

    private DoubtfulShot shot(double mass, double speed) {
        Rig rig = kit.rig(mass);
        LossFit.Fitted loss = kit.toldLoss();
        boolean lossTold = told.tackle().loss() != null;
        Double clip = told.outcome().clipM();
        Shot.Tackle tackle = new Shot.Tackle(
                kit.line(), KitReader.spool(), loss.loss(), clip == null ? Double.POSITIVE_INFINITY : clip);
        Double angle = launched.angleDeg();
        Double height = told.outcome().tipHeightM();
        if (launched.speedMps() != null) {
            part("launchSpeed", "launch speed", speed, launched.speedPlusMinus(), "m/s", launched.speedBasis());
        }
        double angleDeg = angle == null ? USUAL_ANGLE_DEG : angle;
        double angleSd = angle == null ? USUAL_ANGLE_SD : launched.anglePlusMinus();
        part(
                "launchAngle",
                "launch angle",
                angleDeg,
                angleSd,
                "°",
                angle == null ? "assumed: " + launched.angleBasis() : launched.angleBasis());
        double heightM = height == null ? height() : height;
        double heightSd = height == null ? HEIGHT_SD : TOLD_HEIGHT_SD;
        part(
                "tipHeight",
                "rod tip above the water",
                heightM,
                heightSd,
                "m",
                height == null ? "worked out from rod and bank as they usually are" : "as you gave it");
        Shot shot = new Shot(
                new Shot.Start(speed, Math.toRadians(Math.max(-20, Math.min(80, angleDeg))), heightM),
                rig,
                tackle,
                kit.wind(),
                KitReader.air());
        Doubt doubt = new Doubt(
                launched.speedMps() == null ? 0 : launched.speedPlusMinus(),
                Math.toRadians(angleSd),
                heightSd,
                KitReader.massShare(),
                kit.dragShare(),
                kit.lineShare(),
                KitReader.lineDragShare(),
                loss.plusMinus() / Math.max(0.05, loss.loss()),
                kit.windSd());
        DoubtfulShot s = new DoubtfulShot(shot, doubt);
        return lossTold ? s.with(doubt.withFittedLoss(doubt.lossShare())) : s;
    }

    private void part(String id, String label, double value, double sd, String unit, String basis) {
        kit.parts().add(new Outlook.Part(id, label, value, sd, unit, basis));
    }

    private double height() {
        Double free = setup.freeLengthM();
        Double butt = launched.buttAngleDeg();
        double rise = Math.sin(Math.toRadians(butt == null ? USUAL_BUTT_DEG : butt));
        return HAND_M + (free == null ? USUAL_FREE_M : free) * Math.max(0, rise);
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
