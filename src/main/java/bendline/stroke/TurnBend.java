package bendline.stroke;

import bendline.signal.Trend;
import java.util.stream.IntStream;

/** Whether the blank is clearly bent while the rod turns: something heavy hung on its tip. */
final class TurnBend {

    /** Least compression that shows that something hung on the tip. */
    private static final double LEAST_COMPRESSION = 0.012;

    /** The same where the tip is not seen, so that how well the shape is known is not either. */
    private static final double CLEARLY_SHORTENED = 0.025;

    /** By how many uncertainties the blank must be bent. */
    private static final double CLEAR = 3;

    private static final double BEND_LINGERS_SECONDS = 0.12;

    private static final double NEARLY_STRAIGHT = 0.97;

    /**
     * How far before the turn a rod may have been seen straight that was followed since, real seconds: the end of its way back and its
     * rest behind.
     */
    private static final double WAIT_SECONDS = 1;

    /** From so many frames on a number is known of a stretch and not only of a few frames that may all be wrong. */
    private static final int ENOUGH = 4;

    /** Of a clip what tells of a turn's bend: so far to either side, real seconds. */
    private static final double ABOUT_SECONDS = 0.5;

    /**
     * Over which the errors of a blank's shape go on, real seconds: a tenth on the traces of nine rendered clips, so that neighbouring
     * frames tell less together than as many independent ones.
     */
    private static final double ERRORS_LAST_SECONDS = 0.1;

    /**
     * Least square of the tip's lag, radians, over the compression of the same blank. From the geometry of shallow curves: 10 for a
     * cantilever under a load on its tip, 6 for an arc, 2.5 where the direction turns like the square of the way along, and 1.2 for an
     * arc whose inner half does not bend at all.
     */
    private static final double LAG_SQUARE = 1.2;

    private final RodSeries rod;
    private final double step;

    /** @param step usual time between frames, real seconds */
    TurnBend(RodSeries rod, double step) {
        this.rod = rod;
        this.step = step;
    }

    /** Whether it is in two frames of a turn at least, each by itself, or by all frames of the turn together. */
    boolean clear(CastFinder.Candidate c) {
        return inSingleFrames(c) || inAllTogether(c);
    }

    /**
     * By what a frame shows of the whole blank, or of a part of it where the tip does not show. A part counts only of a rod that was
     * seen whole and straight before: else it may be anything.
     */
    private boolean inSingleFrames(CastFinder.Candidate c) {
        boolean known = wholeBefore(c);
        int bent = 0;
        for (int i : frames(c.start(), c.end() + BEND_LINGERS_SECONDS)) {
            double compression = 1 - rod.chord()[i];
            boolean whole = compression >= Math.max(LEAST_COMPRESSION, CLEAR * rod.chordSd()[i]);
            boolean part = known && Double.isNaN(compression) && rod.shortened()[i] >= CLEARLY_SHORTENED;
            bent += whole || part ? 1 : 0;
        }
        return bent >= 2;
    }

    /**
     * By the smoothed bend. Each frame of a small or blurred rod may leave its bend uncertain by half, ten of them do not. What is then
     * left are errors that all frames share, of the tip above all; those shorten the chord without holding the tip back, or the
     * other way round, so both must say the same. A bend as small as a quick swing gives a bare rod counts if the rig is seen to
     * leave: the line was slack.
     */
    private boolean inAllTogether(CastFinder.Candidate c) {
        int from = first(c.start() - ABOUT_SECONDS);
        RodSeries about = rod.slice(from, first(c.end() + ABOUT_SECONDS));
        int[] whole = IntStream.of(frames(c.start(), c.end()))
                .filter(i -> !Double.isNaN(rod.chord()[i]))
                .map(i -> i - from)
                .toArray();
        if (whole.length <= ENOUGH) {
            return false;
        }
        BendSize size = BendSize.of(about);
        Trend bend = StrokeTrends.smoother(step).smooth(about.time(), size.value(), size.sd());
        Trend lag = StrokeTrends.smoother(step).smooth(about.time(), about.lag(), about.lagSd());
        double sds = CLEAR * Math.sqrt(1 + 2 * ERRORS_LAST_SECONDS / step);
        double least = letsGo(c) ? 0 : Math.sqrt(LEAST_COMPRESSION);
        return IntStream.of(whole)
                        .filter(i -> bend.values()[i] >= Math.max(least, sds * bend.valueSds()[i]))
                        .filter(i -> lag.values()[i] >= Math.sqrt(LAG_SQUARE) * bend.values()[i])
                        .count()
                >= 2;
    }

    /** Whether the rig is seen to leave the circle of its drop round the tip. */
    private boolean letsGo(CastFinder.Candidate c) {
        return new ReleaseFinder(rod, step)
                .byRig(c.fastest(), c.end() + BEND_LINGERS_SECONDS)
                .known();
    }

    /**
     * Whether the rod was seen whole and mostly straight before the turn, for longer than one and the same error lasts, and followed
     * from then on.
     */
    private boolean wholeBefore(CastFinder.Candidate c) {
        boolean[] followed = rod.watched(StrokeTrends.bridge(step));
        int straight = 0;
        int whole = 0;
        for (int i = first(c.start()) - 1; i >= 0 && followed[i] && c.start() - rod.time()[i] < WAIT_SECONDS; i--) {
            whole += Double.isNaN(rod.chord()[i]) ? 0 : 1;
            straight += rod.chord()[i] > NEARLY_STRAIGHT ? 1 : 0;
        }
        return straight > ENOUGH && straight * step > ERRORS_LAST_SECONDS && straight > 0.5 * whole;
    }

    private int[] frames(double from, double to) {
        return IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= from && rod.time()[i] <= to)
                .toArray();
    }

    /** The first frame not before a time; the number of frames if there is none. */
    private int first(double time) {
        return (int) IntStream.range(0, rod.size())
                .takeWhile(i -> rod.time()[i] < time)
                .count();
    }
}
