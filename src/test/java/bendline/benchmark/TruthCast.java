package bendline.benchmark;

import java.util.Map;

/**
 * What truly happens in one cast.
 *
 * @param events clip seconds by the event's name in files, such as {@code release}
 * @param faults grade by finding id ({@code flat-rushed-backswing}): {@code none}, {@code borderline}, {@code mild} or
 *     {@code clear}
 * @param launchSpeedMps speed of the rig at release, metres per second; NaN where not known
 * @param launchAngleDeg direction of the rig at release above the horizontal, degrees; NaN where not known
 * @param peakPullN largest pull of the line on the tip up to the release, newtons, its mean over 40 ms or, at 30 frames a second, 67;
 *     NaN where not known
 * @param peakEnergyJ most energy held in the blank's bend up to the release, joules; NaN where not known
 */
public record TruthCast(
        Map<String, Double> events,
        Map<String, String> faults,
        double launchSpeedMps,
        double launchAngleDeg,
        double peakPullN,
        double peakEnergyJ) {

    /** Pull and energy not known. */
    public TruthCast(
            Map<String, Double> events, Map<String, String> faults, double launchSpeedMps, double launchAngleDeg) {
        this(events, faults, launchSpeedMps, launchAngleDeg, Double.NaN, Double.NaN);
    }

    /** Copies the maps. */
    public TruthCast {
        events = Map.copyOf(events);
        faults = Map.copyOf(faults);
    }
}
