package bendline.stroke;

/** What is measured of a stroke, in the order of the report. */
enum Quantity {
    BACKSWING_SECONDS("backswingSeconds", "backswing time", "s"),
    SETTLE_SECONDS("settleSeconds", "settle: end of backswing to start of forward stroke", "s"),
    FORWARD_SECONDS("forwardSeconds", "forward stroke time", "s"),
    TEMPO("tempo", "tempo: backswing time over forward time", "1"),
    REARMOST_DEG("rearmostDeg", "rearmost butt angle", "deg"),
    SWEEP_DEG("sweepDeg", "sweep: butt angle turned through, forward start to release", "deg"),
    PEAK_BACK_RATE("peakBackRate", "fastest turn on the way back", "deg/s"),
    PEAK_FORWARD_RATE("peakForwardRate", "fastest turn forward", "deg/s"),
    COMPRESSION("compression", "deepest compression in the forward stroke", "1"),
    TIP_LAG_DEG("tipLagDeg", "largest angle of the tip behind the butt's direction", "deg"),
    COMPRESSION_AT_QUARTER("compressionAtQuarterSweep", "compression after a quarter of the sweep", "1"),
    COMPRESSION_AT_HALF("compressionAtHalfSweep", "compression after half of the sweep", "1"),
    COMPRESSION_AT_THREE_QUARTERS(
            "compressionAtThreeQuarterSweep", "compression after three quarters of the sweep", "1"),
    EARLY_LOAD("earlyLoad", "compression after a quarter of the sweep over the deepest", "1"),
    HALF_LOAD("halfLoad", "compression after half of the sweep over the deepest", "1"),
    LOAD_SWEEP_SHARE("loadSweepShare", "share of the sweep spent before a quarter of the deepest compression", "1"),
    PEAK_BEND_LAG("peakBendLag", "from deepest bend to release", "s"),
    STOP_TO_RELEASE("stopToReleaseSeconds", "from the stop to the release", "s"),
    RELEASE_ANGLE_DEG("buttAngleAtReleaseDeg", "butt angle at the release", "deg"),
    HELD_ANGLE_DEG("heldAngleDeg", "butt angle held after the release", "deg"),
    FALL_150("fallAt150msDeg", "fall of the rod 150 ms after the release", "deg"),
    FALL_250("fallAt250msDeg", "fall of the rod 250 ms after the release", "deg"),
    FALL_500("fallAt500msDeg", "fall of the rod 500 ms after the release", "deg"),
    FALL_RATE("fallRate", "fastest fall of the rod within half a second after the release", "deg/s"),
    DROP_STARTS("dropStartsAfterRelease", "from the release until the rod has fallen by 5°", "s"),
    TIP_PATH_RADIUS("tipPathRadius", "radius of the circle nearest to the tip's path, in free lengths", "1"),
    TIP_PATH_ROUNDNESS("tipPathRoundness", "how far the tip's path strays from that circle, in free lengths", "1"),
    TIP_PATH_DIP("tipPathDip", "deepest dip of the tip's path, in free lengths", "1"),
    PEAK_TIP_SPEED_PX("peakTipSpeedPx", "fastest tip up to the release, in the picture", "px/s"),
    PEAK_TIP_SPEED("peakTipSpeed", "fastest tip up to the release", "m/s"),
    RIG_SWING_DEG(
            "rigSwingDeg", "rig behind (+) or before (−) the plumb line under the tip at the forward start", "deg"),
    RIG_AWAY("rigAwayRate", "how fast the rig still moves away from the cast at the forward start, in drops", "1/s"),
    LINE_SLACK("lineSlack", "largest slack in the drop during the first half of the sweep, over the drop", "1"),
    DROP_M("dropLength", "drop between tip and rig", "m"),
    LAUNCH_SPEED("launchSpeed", "speed of the rig at the release", "m/s"),
    LAUNCH_ANGLE_DEG("launchAngleDeg", "angle of the rig's path above level at the release", "deg"),
    RING_HZ("ringHz", "frequency at which the bare rod rings after the release", "Hz"),
    FLIGHT_SECONDS("flightSeconds", "from the release until the line comes tight on the clip", "s"),
    HAND_BELOW_HEAD("upperHandAgainstHead", "upper hand against the head at the forward start", "m"),
    PULL_SPEED("lowerHandPullSpeed", "speed of the lower hand to the chest", "m/s"),
    PEAK_ORDER("peakOrder", "order in which hips, shoulders, hands and butt peak", "1"),
    LAUNCH_AGAINST_BEST("launchAngleAgainstBestDeg", "launch angle against the best for this rig and wind", "deg");

    private final String id;
    private final String label;
    private final String unit;

    Quantity(String id, String label, String unit) {
        this.id = id;
        this.label = label;
        this.unit = unit;
    }

    String id() {
        return id;
    }

    Measure known(double value, double plusMinus, String basis) {
        return new Measure(id, label, unit, value, plusMinus, basis);
    }

    Measure unknown(String why) {
        return Measure.unknown(id, label, unit, why);
    }
}
