package bendline.analysis;

import bendline.flight.Answer;
import bendline.flight.Outlook;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;

/** Puts what the flight says of the aim among the measures of a stroke, so that the technique can be held against it. */
final class Aimed {

    /** An interval is never known to nothing. */
    private static final double LEAST_SD = 1e-3;

    private Aimed() {}

    static Stroke stroke(Stroke timed, Outlook outlook) {
        return timed.with(told(timed.measure("launchAngleAgainstBestDeg"), outlook.againstBestDeg()))
                .with(told(timed.measure("launchGivenUp"), outlook.givenUp()));
    }

    private static Measure told(Measure asked, Answer answer) {
        Double value = answer.value();
        return value == null
                ? Measure.unknown(asked.id(), asked.label(), asked.unit(), answer.basis())
                : new Measure(
                        asked.id(),
                        asked.label(),
                        asked.unit(),
                        value,
                        Math.max(LEAST_SD, answer.plusMinus()),
                        answer.basis());
    }
}
