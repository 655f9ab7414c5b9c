package bendline.technique;

import bendline.stroke.EventKind;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import java.util.List;

/** The faults that can be shown: first those that rod and rig alone show, in the order in which they come in a cast. */
final class Faults {

    /** A rod that falls less than this in half a second is held, so that no drop has a beginning. */
    private static final double HELD_DEG = 5;

    static final List<Fault> ALL = List.of(
            flatRushedBackswing(),
            slackStart(),
            shortSweep(),
            lateBend(),
            underCompressed(),
            dippedTipPath(),
            releasedEarly(),
            releasedLate(),
            tipDroppedEarly(),
            BodyFaults.lowHands(),
            BodyFaults.weakPull(),
            BodyFaults.outOfOrder());

    private Faults() {}

    private static Fault flatRushedBackswing() {
        return new Fault(
                        "flat-rushed-backswing",
                        "Flat, rushed backswing",
                        List.of(
                                Criterion.any(
                                        "the backswing is quick against the forward stroke",
                                        "flat-rushed-backswing.tempo"),
                                Criterion.any(
                                        "the push begins before the rig has settled behind",
                                        "flat-rushed-backswing.settle",
                                        "flat-rushed-backswing.slack"),
                                Criterion.any(
                                        "the blank stays straight early in the sweep and bends late",
                                        "flat-rushed-backswing.early-load",
                                        "flat-rushed-backswing.load-sweep"),
                                Criterion.any("the rod is laid flat behind", "flat-rushed-backswing.rearmost")),
                        2,
                        List.of(
                                EventKind.BACKSWING_END,
                                EventKind.REARMOST,
                                EventKind.FORWARD_START,
                                EventKind.PEAK_BEND),
                        "Unhurried backswing: tempo {tempo}, and the rig had {settleSeconds} to settle before the push.",
                        "While the rig is still on its way and the line is slack, your blank has nothing to bend against: the first"
                                + " part of your sweep moves a straight rod, the bend comes late, and the rig starts its flight"
                                + " slower and less in line.",
                        "Half-power casts with a spoken count: back on one-two-three, wait until you feel the rig pull at the tip,"
                                + " then forward on four. Stop the rod with its tip well above level behind, and let the rig come"
                                + " tight before the hands move. Clear ground behind and beside you, leader checked.")
                // With an unhurried backswing that ended high and settled, slack and a late bend have another cause.
                .rootedIn("tempo", "settleSeconds", "rearmostDeg");
    }

    private static Fault slackStart() {
        return new Fault(
                "slack-start",
                "Slack line at the start of the push",
                List.of(
                        Criterion.any("the line between tip and rig is slack", "slack-start.slack"),
                        Criterion.any("the rig still swings away from the cast", "slack-start.away"),
                        Criterion.any(
                                "the blank is still straight after a quarter of the sweep", "slack-start.early-load")),
                2,
                List.of(EventKind.FORWARD_START, EventKind.FASTEST_TURN),
                "Tight line at the start of the push: the blank had {earlyLoad} of its deepest compression after a quarter"
                        + " of the sweep.",
                "Your hands spend way on taking up slack. When it is gone the rig is jerked, which strains the leader and"
                        + " throws bait off the hook.",
                "Without casting: swing the rig back, stop, and wait with the hands still until the tip is drawn back; say"
                        + " \"now\" aloud when you feel it. Then cast at half power, starting the push only on \"now\".");
    }

    private static Fault shortSweep() {
        return new Fault(
                "short-sweep",
                "Short sweep",
                List.of(
                        Criterion.any("the rod turns through little", "short-sweep.sweep"),
                        Criterion.any(
                                "it starts or ends near the upright", "short-sweep.rearmost", "short-sweep.release")),
                2,
                List.of(EventKind.REARMOST, EventKind.FORWARD_START, EventKind.RELEASE),
                "Long sweep: the rod turned through {sweepDeg} before the line went.",
                "Speed takes way as well as force. On a short way your hands must jerk, and the blank is loaded late or not"
                        + " at all.",
                "Slow casts without aim for distance: reach back until the upper hand is behind the ear, and stop in front"
                        + " at the same mark every time. Lengthen the way first, add speed after.");
    }

    private static Fault lateBend() {
        return new Fault(
                "late-bend",
                "Late bend",
                List.of(
                        Criterion.any("half of the sweep is gone before the blank bends", "late-bend.load-sweep"),
                        Criterion.any("there is little bend at half sweep", "late-bend.half-load"),
                        Criterion.any("the blank is still bending when the line goes", "late-bend.peak-lag")),
                2,
                List.of(EventKind.FORWARD_START, EventKind.FASTEST_TURN, EventKind.PEAK_BEND, EventKind.RELEASE),
                "Bend built up early: {halfLoad} of the deepest compression was there at half sweep.",
                "What you put into the blank late does not come back out before the line goes. Part of your effort stays"
                        + " in the rod.",
                "Lead with the hands: push the butt forward with the rod angle kept for the first part, feel the bend, and"
                        + " only then turn. Half power, until the bend comes early every time.");
    }

    private static Fault underCompressed() {
        return new Fault(
                "under-compressed",
                "Rod hardly loaded",
                List.of(
                        Criterion.any("the blank is bent little at its deepest", "under-compressed.compression"),
                        Criterion.any("the tip hardly trails the butt", "under-compressed.lag"),
                        Criterion.any(
                                "it is bent far less than this rod with this rig can be",
                                "under-compressed.loaded-share")),
                2,
                List.of(EventKind.PEAK_BEND, EventKind.FASTEST_TURN),
                "Well loaded: the tip trailed the butt by {tipLagDeg} at most.",
                "A blank that is hardly bent works as a stick: it gives nothing back, and the rig gets only the speed of"
                        + " your hands.",
                "Build speed through the stroke rather than at its start, and check that rig and rod belong together. Before"
                        + " casts with more power: leader strong enough for the rig's weight, knots wetted and tested, line"
                        + " lying free on the spool, nobody within reach and no overhead line anywhere near. Add power in small"
                        + " steps, best with a licensed coach.");
    }

    private static Fault dippedTipPath() {
        return new Fault(
                "dipped-tip-path",
                "Dipped tip path",
                List.of(
                        Criterion.any("the tip's path sags", "dipped-tip-path.dip"),
                        Criterion.any("it strays from a smooth curve", "dipped-tip-path.roundness")),
                2,
                List.of(EventKind.FORWARD_START, EventKind.FASTEST_TURN, EventKind.RELEASE),
                "Smooth tip path: it dipped by no more than {tipPathDip} of the free length.",
                "The rig follows your tip: down first and then up. It loses speed in the bow and swings about on its drop"
                        + " when the line goes.",
                "Turn the rod later and the hands further: picture the tip running along a ceiling. Film from the side and"
                        + " look at the tip's path only.");
    }

    private static Fault releasedEarly() {
        return new Fault(
                "released-early",
                "Released too early",
                List.of(
                        Criterion.any("the rig leaves steeper than is best for it", "released-early.angle")
                                .mustHold(),
                        Criterion.any("that gives distance away", "released-early.given-up")
                                .mustHold()),
                2,
                List.of(EventKind.RELEASE, EventKind.STOP),
                "Not let go too early: the rig left at {launchAngleDeg}.",
                "Let go too early, your rig climbs: it spends its speed on height, the wind has longer to work on it, and the line"
                        + " bows.",
                "Half-power casts: keep the finger on the line a moment longer, and aim lower by a tree's height than feels"
                        + " right. Film a set and watch the launch angle, not the distance.");
    }

    private static Fault releasedLate() {
        return new Fault(
                "released-late",
                "Released too late",
                List.of(
                        Criterion.any("the rig leaves flatter than is best for it", "released-late.angle")
                                .mustHold(),
                        Criterion.any("that gives distance away", "released-late.given-up")
                                .mustHold()),
                2,
                List.of(EventKind.RELEASE, EventKind.STOP),
                "Not let go too late: the rig left at {launchAngleDeg}.",
                "Let go too late, your rig flies flat and comes down while it is still fast.",
                "Half-power casts: let the line go a moment earlier, and aim higher by a tree's height. A finger that slips off"
                        + " late may want a glove or finger guard, not a change of stroke.");
    }

    private static Fault tipDroppedEarly() {
        return new Fault(
                "tip-dropped-early",
                "Tip dropped too early",
                List.of(
                        Criterion.any(
                                        "the rod falls far under its held angle",
                                        "tip-dropped-early.far-quarter",
                                        "tip-dropped-early.far-half")
                                .mustHold(),
                        Criterion.any("it begins to fall while the line runs fastest", "tip-dropped-early.soon")
                                .harmlessWhere(Faults::held),
                        Criterion.any("it falls fast", "tip-dropped-early.fast")),
                2,
                List.of(EventKind.RELEASE, EventKind.ROD_STRAIGHT, EventKind.TIP_LOWEST),
                "Rod held after the release, at {heldAngleDeg}.",
                "Line leaves your spool fastest right after the release. Drawn over a tip ring that points down it rubs and"
                        + " slaps the blank, and the rig loses distance in every metre.",
                "Hold the finish: after the release keep the rod pointing after the rig, count \"one-two\" aloud, and lower it"
                        + " only as the rig comes down. Casts at half power first, until the rod stays by itself.");
    }

    private static boolean held(Stroke stroke) {
        Measure half = stroke.measure("fallAt500msDeg");
        Double fall = half.value();
        return fall != null && fall + half.plusMinus() < HELD_DEG;
    }
}
