package bendline.analysis;

import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of how a rig left: from a clip, or told. Uncertainties are 68 %.
 *
 * @param speedMps launch speed, or null
 * @param speedPlusMinus its uncertainty; NaN where it is not known
 * @param speedBasis what it rests on, or why it is not known
 * @param angleDeg launch angle above level, or null
 * @param anglePlusMinus its uncertainty; NaN where it is not known
 * @param angleBasis what it rests on, or why it is not known
 * @param buttAngleDeg of the rod at the release, for the height of the tip, or null
 * @param clipSeconds from the release until the line came tight on the clip, or null
 * @param clipSecondsPlusMinus its uncertainty
 */
public record Launched(
        @Nullable Double speedMps,
        double speedPlusMinus,
        String speedBasis,
        @Nullable Double angleDeg,
        double anglePlusMinus,
        String angleBasis,
        @Nullable Double buttAngleDeg,
        @Nullable Double clipSeconds,
        double clipSecondsPlusMinus) {

    /** As a clip shows it. */
    public static Launched of(Stroke stroke) {
        return of(stroke.measures());
    }

    /** As the measures of a stroke tell it. */
    public static Launched of(List<Measure> measures) {
        Measure speed = find(measures, "launchSpeed");
        Measure angle = find(measures, "launchAngleDeg");
        Measure tight = find(measures, "flightSeconds");
        return new Launched(
                speed.value(),
                speed.plusMinus(),
                speed.basis(),
                angle.value(),
                angle.plusMinus(),
                angle.basis(),
                find(measures, "buttAngleAtReleaseDeg").value(),
                tight.value(),
                tight.plusMinus());
    }

    /** As somebody tells it, without a clip. */
    public static Launched told(
            @Nullable Double speedMps, double speedPlusMinus, @Nullable Double angleDeg, double anglePlusMinus) {
        return new Launched(
                speedMps,
                speedPlusMinus,
                speedMps == null ? "no launch speed was given" : "as you gave it",
                angleDeg,
                anglePlusMinus,
                angleDeg == null ? "no launch angle was given" : "as you gave it",
                null,
                null,
                Double.NaN);
    }

    private static Measure find(List<Measure> measures, String id) {
        return measures.stream()
                .filter(m -> m.id().equals(id))
                .findFirst()
                .orElse(Measure.unknown(id, id, "1", "it was not measured"));
    }
}
