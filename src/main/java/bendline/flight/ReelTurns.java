package bendline.flight;

import org.jspecify.annotations.Nullable;

/**
 * Turns of the reel's handle and metres of line, for a reel counted once: so many turns for a known distance. As the spool empties,
 * a turn winds less; where spool and line are known that is taken into account.
 */
public final class ReelTurns {

    private static final double PRECISION_M = 1e-4;

    private final double metresPerTurnFull;
    private final @Nullable Spool spool;
    private final double lineDiameterM;

    private ReelTurns(double metresPerTurnFull, @Nullable Spool spool, double lineDiameterM) {
        this.metresPerTurnFull = metresPerTurnFull;
        this.spool = spool;
        this.lineDiameterM = lineDiameterM;
    }

    /** Every turn taken as the same. */
    public static ReelTurns counted(double metres, double turns) {
        check(metres, turns);
        return new ReelTurns(metres / turns, null, 0);
    }

    /** With the spool, so that turns near its core count for less. */
    public static ReelTurns counted(double metres, double turns, Spool spool, double lineDiameterM) {
        check(metres, turns);
        Amounts.check("line diameter", lineDiameterM, 5e-5, 1.5e-3, "m");
        ReelTurns one = new ReelTurns(1, spool, lineDiameterM);
        return new ReelTurns(one.turnsFor(metres) / turns, spool, lineDiameterM);
    }

    private static void check(double metres, double turns) {
        Amounts.check("counted distance", metres, 5, 300, "m");
        Amounts.check("counted turns", turns, 3, 1000, "");
        Amounts.check("line wound in a turn", metres / turns, 0.3, 2, "m");
    }

    /** Line wound by a turn when so much of it is out, m. */
    public double recoveryM(double outM) {
        return spool == null
                ? metresPerTurnFull
                : metresPerTurnFull * spool.diameterM(outM, lineDiameterM) / spool.fullDiameterM();
    }

    /** Turns that wind in so much line, from so far out to the full spool. */
    public double turnsFor(double metres) {
        Amounts.check("distance", metres, 0, 400, "m");
        if (spool == null) {
            return metres / metresPerTurnFull;
        }
        // Simpson's rule; the diameter is a square root of a straight line, so a few pieces are plenty.
        int n = 40;
        double sum = 0;
        for (int i = 0; i <= n; i++) {
            double weight = i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight / recoveryM(metres * i / n);
        }
        return sum * metres / (3 * n);
    }

    /** Line wound in by so many turns, m. */
    public double metresFor(double turns) {
        Amounts.check("turns", turns, 0, 400, "");
        if (turns == 0) {
            return 0;
        }
        return spool == null ? turns * metresPerTurnFull : Solve.between(0, 400, PRECISION_M, m -> turnsFor(m) - turns);
    }
}
