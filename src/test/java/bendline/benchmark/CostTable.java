package bendline.benchmark;

import bendline.simulate.CastFilm;
import bendline.simulate.CastScript;
import bendline.simulate.RigSpec;
import bendline.simulate.RodSpec;
import bendline.simulate.Scenario;
import bendline.simulate.Severity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * What each fault costs in the simulator: the distance in still air against the same angler's cast without it. The hands move by a
 * script, so that what a real angler would mend or lose by feel is not in it; the line's rubbing on a tip ring that points away from
 * it grows by exp(μ·angle) with μ 0.25 (rope round a bollard; the μ is common practice, no source).
 */
public final class CostTable {

    private static final double FRICTION = 0.25;

    /** Kits: rod length, handle, rig mass, drop. */
    private static final double[][] KITS = {{3.9, 0.62, 85, 1.25}, {3.6, 0.6, 50, 1.1}, {4.2, 0.66, 110, 1.4}};

    /** What a script can be changed in, in the order of its parts. */
    private static final class Parts {
        double layBack;
        double backswing;
        double settle;
        double feel;
        double turnDelay;
        double turn;
        double stop;
        double late;
        double drop;
        double dropDelay;
        double dropTime;
        Severity rush = Severity.NONE;

        Parts(CastScript c) {
            layBack = c.layBackDeg();
            backswing = c.backswingSeconds();
            settle = c.settleSeconds();
            feel = c.feelSeconds();
            turnDelay = c.turnDelaySeconds();
            turn = c.turnSeconds();
            stop = c.stopAngleDeg();
            late = c.releaseLateSeconds();
            drop = c.dropDeg();
            dropDelay = c.dropDelaySeconds();
            dropTime = c.dropSeconds();
        }

        CastScript script(CastScript c) {
            return new CastScript(
                    c.startSeconds(),
                    c.readyAngleDeg(),
                    layBack,
                    backswing,
                    settle,
                    feel,
                    c.pushSeconds(),
                    turnDelay,
                    turn,
                    stop,
                    c.releaseDirectionDeg(),
                    late,
                    c.holdSeconds(),
                    drop,
                    dropDelay,
                    dropTime,
                    false,
                    rush,
                    Severity.NONE,
                    null);
        }
    }

    private CostTable() {}

    /** Prints it alone. */
    public static void main(String[] args) {
        System.out.println(table());
    }

    static String table() {
        Map<String, UnaryOperator<Parts>> changes = changes();
        double[] clean = distances(p -> p);
        StringBuilder out = new StringBuilder(String.format(
                Locale.ROOT,
                "| one thing changed in a clean cast of %.0f, %.0f and %.0f m (85, 50 and 110 g) | distance lost, m |%n|---|---|%n",
                clean[0],
                clean[1],
                clean[2]));
        changes.forEach((name, change) -> {
            double[] d = distances(change);
            out.append("| ").append(name).append(" | ");
            for (int i = 0; i < d.length; i++) {
                out.append(i == 0 ? "" : " / ");
                out.append(Double.isNaN(d[i]) ? "no cast" : String.format(Locale.ROOT, "%.0f", clean[i] - d[i]));
            }
            out.append(" |\n");
        });
        return out.toString();
    }

    private static Map<String, UnaryOperator<Parts>> changes() {
        Map<String, UnaryOperator<Parts>> out = new LinkedHashMap<>();
        CastScript rushed = CastScript.of(0.8, 1, 0);
        out.put("flat and rushed throughout", p -> {
            Parts r = new Parts(rushed);
            r.rush = Severity.CLEAR;
            return r;
        });
        out.put("no settle, the push runs into the backswing", p -> {
            p.settle = rushed.settleSeconds();
            p.feel = 0;
            p.rush = Severity.MILD;
            return p;
        });
        out.put("backswing in 1.1 s, all else kept", p -> with(p, q -> q.backswing = 1.1));
        out.put("laid back to 169°, all else kept", p -> with(p, q -> q.layBack = 169));
        out.put("laid back to 118° only: a short sweep", p -> with(p, q -> q.layBack = 118));
        out.put("turn leads the push by 0.1 s", p -> with(p, q -> q.turnDelay = -0.1));
        out.put("turn waits 0.1 s longer for the push", p -> with(p, q -> q.turnDelay += 0.1));
        out.put("half as slow again: the rod hardly loaded", p -> with(p, q -> q.turn *= 1.5));
        out.put("let go 20 ms early", p -> with(p, q -> q.late = -0.02));
        out.put("let go 20 ms late", p -> with(p, q -> q.late = 0.02));
        for (int deg : new int[] {12, 25, 46}) {
            out.put(
                    "rod dropped by " + deg + "° at once after the release (rubbing line only)",
                    p -> with(p, q -> {
                        q.drop = deg;
                        q.dropDelay = 0.02;
                        q.dropTime = 0.22;
                    }));
        }
        return out;
    }

    private static Parts with(Parts p, java.util.function.Consumer<Parts> change) {
        change.accept(p);
        return p;
    }

    private static double[] distances(UnaryOperator<Parts> change) {
        return List.of(0, 1, 2).parallelStream()
                .map(k -> distance(KITS[k], change))
                .collect(Collectors.toList())
                .stream()
                .mapToDouble(d -> d)
                .toArray();
    }

    private static double distance(double[] kit, UnaryOperator<Parts> change) {
        CastScript clean = CastScript.of(0.8, 0, 0);
        CastScript script = change.apply(new Parts(clean)).script(clean);
        Scenario s = GridDeck.scenario(
                "cost", 5, 1.78, RodSpec.matched(kit[0], kit[1], kit[2]), RigSpec.feeder(kit[2], kit[3]), script);
        try {
            return CastFilm.of(s).distance(0, FRICTION);
        } catch (IllegalStateException neverLetGo) {
            return Double.NaN;
        }
    }
}
