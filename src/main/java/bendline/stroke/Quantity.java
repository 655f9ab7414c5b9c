package bendline.stroke;

/** What is measured of a stroke, in the order of the report. */
enum Quantity {
    BACKSWING_SECONDS("backswingSeconds", "backswing time", "s"),
    SETTLE_SECONDS("settleSeconds", "settle", "s"),
    FORWARD_SECONDS("forwardSeconds", "forward stroke time", "s"),
    TEMPO("tempo", "tempo", "1"),
    REARMOST_DEG("rearmostDeg", "rearmost butt angle", "deg"),
    SWEEP_DEG("sweepDeg", "sweep", "deg"),
    PEAK_BACK_RATE("peakBackRate", "fastest turn on the way back", "deg/s"),
    PEAK_FORWARD_RATE("peakForwardRate", "fastest turn forward", "deg/s"),
    COMPRESSION("compression", "deepest compression", "1"),
    TIP_LAG_DEG("tipLagDeg", "tip behind the butt at most", "deg"),
    COMPRESSION_AT_QUARTER("compressionAtQuarterSweep", "compression after a quarter of the sweep", "1"),
    COMPRESSION_AT_HALF("compressionAtHalfSweep", "compression after half of the sweep", "1"),
    COMPRESSION_AT_THREE_QUARTERS(
            "compressionAtThreeQuarterSweep", "compression after three quarters of the sweep", "1"),
    EARLY_LOAD("earlyLoad", "early load (compression at a quarter of the sweep over the deepest)", "1"),
    HALF_LOAD("halfLoad", "half load (compression at half sweep over the deepest)", "1"),
    LOAD_SWEEP_SHARE("loadSweepShare", "share of the sweep spent before the blank has half its bend", "1"),
    PEAK_BEND_LAG("peakBendLag", "from deepest bend to release", "s"),
    STOP_TO_RELEASE("stopToReleaseSeconds", "from the stop to the release", "s"),
    RELEASE_ANGLE_DEG("buttAngleAtReleaseDeg", "butt angle at the release", "deg"),
    HELD_ANGLE_DEG("heldAngleDeg", "butt angle held after the release", "deg"),
    FALL_150("fallAt150msDeg", "fall 150 ms after the release", "deg"),
    FALL_250("fallAt250msDeg", "fall 250 ms after the release", "deg"),
    FALL_500("fallAt500msDeg", "fall 500 ms after the release", "deg"),
    FALL_RATE("fallRate", "fastest fall within half a second", "deg/s"),
    DROP_STARTS("dropStartsAfterRelease", "start of the fall after the release", "s"),
    TIP_PATH_RADIUS("tipPathRadius", "radius of the circle nearest to the tip's path, in free lengths", "1"),
    TIP_PATH_ROUNDNESS("tipPathRoundness", "stray of the tip's path from a circle, in free lengths", "1"),
    TIP_PATH_DIP("tipPathDip", "deepest dip of the tip's path, in free lengths", "1"),
    PEAK_TIP_SPEED_PX("peakTipSpeedPx", "fastest tip up to the release, in the picture", "px/s"),
    PEAK_TIP_SPEED("peakTipSpeed", "fastest tip up to the release", "m/s"),
    RIG_SWING_DEG("rigSwingDeg", "rig behind (+) or before (−) the plumb line at the forward start", "deg"),
    RIG_AWAY("rigAwayRate", "rig moving away at the forward start, in drops", "1/s"),
    LINE_SLACK("lineSlack", "slack of the drop early in the sweep", "1"),
    DROP_M("dropLength", "drop between tip and rig", "m"),
    LAUNCH_SPEED("launchSpeed", "speed of the rig at the release", "m/s"),
    LAUNCH_ANGLE_DEG("launchAngleDeg", "angle of the rig's path above level at the release", "deg"),
    BEND_CENTRE("bendCentre", "where the blank bends, as a share of the way from hand to tip", "1"),
    PEAK_FORCE("peakTipForce", "largest pull on the tip over 40 ms", "N"),
    FORCE_ANGLE_DEG("peakForceAngleDeg", "direction of that pull, 0 towards the water, 90 up", "deg"),
    STORED_ENERGY("storedEnergy", "most energy held in the bend", "J"),
    ENERGY_LEFT("energyLeftShare", "share of it still in the blank at the release", "1"),
    STRAIGHT_AFTER("straightAfterRelease", "from the release to the straight rod", "s"),
    REACH_STATIC("compressionReachStill", "compression within reach with the rig hanging still", "1"),
    REACH_DYNAMIC("compressionReachCast", "compression within reach in a full cast", "1"),
    LOADED_SHARE("loadedShare", "deepest compression over what is within reach in a full cast", "1"),
    RING_HZ("ringHz", "frequency at which the bare rod rings after the release", "Hz"),
    RING_DAMPING("ringDamping", "damping of that ring over the critical one", "1"),
    FLIGHT_SECONDS("flightSeconds", "from the release until the line comes tight on the clip", "s"),
    HAND_BELOW_HEAD("upperHandAgainstHead", "upper hand above (+) or below (−) the nose at the forward start", "m"),
    HAND_AT_SHOULDER("upperHandAgainstShoulder", "upper hand above the shoulders at the forward start", "m"),
    RELEASE_HAND_HEAD("upperHandAgainstHeadAtRelease", "upper hand above the nose at the release", "m"),
    RELEASE_HAND_SHOULDER("upperHandAgainstShoulderAtRelease", "upper hand above the shoulders at the release", "m"),
    PULL_LENGTH("lowerHandPullLength", "way of the lower hand to the chest", "m"),
    PULL_SPEED("lowerHandPullSpeed", "fastest pull of the lower hand to the chest", "m/s"),
    PULL_AFTER_PUSH("lowerHandPullAfterPush", "fastest pull after the upper hand's fastest push", "s"),
    HIPS_BEFORE_HAND("hipsBeforeUpperHand", "hips fastest before the upper hand is", "s"),
    SHOULDERS_BEFORE_HAND("shouldersBeforeUpperHand", "shoulders fastest before the upper hand is", "s"),
    HAND_BEFORE_BUTT("upperHandBeforeButt", "upper hand fastest before the butt turns fastest", "s"),
    PEAK_ORDER("peakOrder", "largest step against the order hips, shoulders, upper hand, butt, tip", "s"),
    HIP_TURN("hipTurnBeforeRelease", "hips turning fastest, before the release", "s"),
    SHOULDER_TURN("shoulderTurnBeforeRelease", "shoulders turning fastest, before the release", "s"),
    STEP_LENGTH("stepLength", "step of the foot nearer the water", "m"),
    WEIGHT_SHIFT("weightShift", "hips moved forward over the feet in the forward stroke", "m"),
    HANDS_APART("handsApart", "from upper to lower wrist along the rod", "m"),
    LAUNCH_AGAINST_BEST("launchAngleAgainstBestDeg", "launch angle against the best for this rig and wind", "deg"),
    LAUNCH_GIVEN_UP("launchGivenUp", "share of the distance given up by the launch angle", "1");

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
