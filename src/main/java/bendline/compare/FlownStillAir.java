package bendline.compare;

import bendline.analysis.Launched;
import bendline.analysis.Reach;
import bendline.flight.Answer;
import bendline.scene.Conditions;
import bendline.scene.Setup;
import bendline.stroke.Measure;

/** The wind taken out of a measured distance by the flight of the rig that was cast. */
final class FlownStillAir implements StillAir {

    /** A rig that lands this near to its clip, as a share of the line, may have been stopped by it. */
    private static final double AT_CLIP = 0.9;

    @Override
    public Measure of(Cast cast) {
        Measure d = cast.distance();
        Wind wind = cast.wind();
        if (d.value() == null || wind != null && wind.calm()) {
            return d;
        }
        if (wind == null) {
            return unknown(d, "the wind was not written down");
        }
        Setup setup = cast.setup();
        if (setup.castMassKg() == null) {
            return unknown(
                    d,
                    "the sets were cast in different winds, and what this wind did can't be taken out without the weight of the"
                            + " rig");
        }
        Double clip = setup.conditions().outcome().clipM();
        if (clip != null && d.value() > AT_CLIP * clip) {
            return unknown(d, "the clip stopped the rig, so how far it would have gone in other air can't be told");
        }
        Answer still =
                Reach.of(windy(setup, wind, d), Launched.of(cast.measures())).stillAirM();
        return still.value() == null
                ? unknown(d, still.basis())
                : new Measure(
                        d.id(),
                        d.label(),
                        d.unit(),
                        still.value(),
                        still.plusMinus(),
                        "in still air: " + still.basis());
    }

    private static Setup windy(Setup setup, Wind wind, Measure d) {
        Conditions told = setup.conditions();
        Conditions.Outcome o = told.outcome();
        Double plusMinus = Double.isFinite(d.plusMinus()) && d.plusMinus() > 0 ? d.plusMinus() : null;
        return setup.withConditions(new Conditions(
                told.rig(),
                told.tackle(),
                new Conditions.Wind(wind.speedMps(), wind.fromDeg(), told.wind().heightM()),
                new Conditions.Outcome(o.tipHeightM(), o.clipM(), d.value(), plusMinus)));
    }

    private static Measure unknown(Measure d, String why) {
        return Measure.unknown(d.id(), d.label(), d.unit(), why);
    }
}
