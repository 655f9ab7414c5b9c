package bendline.flight;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;
import org.jspecify.annotations.Nullable;

/** Flies a rig: Dormand and Prince's method of order 8 with events for the highest point, the clip and the water. */
public final class Flyer {

    /** Longer than any flight: 120 m/s straight up comes down in 25 s. */
    private static final double LONGEST_SECONDS = 60;

    private static final double SHORTEST_STEP = 1e-9;
    private static final double LONGEST_STEP = 0.4;
    private static final double EVENT_CHECK = 0.1;
    private static final double EVENT_PRECISION = 1e-9;

    /** How far from the tip the flight is begun where there is line, m: nearer, the line has no direction. */
    private static final double BEGIN_M = 0.2;

    private final double relative;

    /** Good to about a millimetre. */
    public Flyer() {
        this(1e-6);
    }

    /** Good to a few centimetres, for flights of which many are drawn. */
    static Flyer quick() {
        return new Flyer(1e-4);
    }

    /** @param relative tolerance of a step */
    Flyer(double relative) {
        this.relative = relative;
    }

    /**
     * Flies one shot.
     *
     * @throws IllegalArgumentException if it begins under the water
     */
    public Flight fly(Shot shot) {
        return fly(shot, null);
    }

    /**
     * A place on the way.
     *
     * @param seconds after the release
     * @param alongM from under the tip
     * @param heightM above the water
     */
    public record Place(double seconds, double alongM, double heightM) {}

    /** The way of the rig, a place every so many seconds and the landing. */
    public List<Place> path(Shot shot, double step) {
        List<Place> out = new ArrayList<>();
        fly(shot, new Sampler(step, shot.start().heightM(), out));
        return out;
    }

    private Flight fly(Shot shot, @Nullable StepHandler watcher) {
        Run run = new Run(shot, begin(shot));
        Stop apex = new Stop(y -> y[4], false, false);
        Stop water = new Stop(y -> y[1] + shot.start().heightM(), false, true);
        Stop clip = new Stop(y -> new Moment(y).lengthM - shot.tackle().clipM(), true, true);
        boolean clippable =
                !shot.tackle().line().none() && Double.isFinite(shot.tackle().clipM());
        FlightEquations free = new FlightEquations(shot, Double.POSITIVE_INFINITY);
        run.go(free, watcher, clippable ? List.of(apex, water, clip) : List.of(apex, water));
        Ledger ledger = run.ledger(free);
        double tight = Double.NaN;
        double peak = Double.NaN;
        if (clip.happened()) {
            FlightEquations held = new FlightEquations(shot, shot.tackle().clipM());
            Peak pull = new Peak(held);
            run.go(held, pull, List.of(apex, water));
            tight = clip.seconds;
            peak = pull.most;
        }
        return run.flight(apex, tight, peak, ledger);
    }

    private static double[] begin(Shot shot) {
        double[] y = new double[Moment.SIZE];
        double c = Math.cos(shot.start().angleRad());
        double s = Math.sin(shot.start().angleRad());
        double ahead = shot.tackle().line().none() ? 0 : BEGIN_M;
        y[0] = ahead * c;
        y[1] = ahead * s;
        y[3] = shot.start().speedMps() * c;
        y[4] = shot.start().speedMps() * s;
        if (y[1] + shot.start().heightM() < 0) {
            throw new IllegalArgumentException("a rig can't be thrown down from the water's own height");
        }
        return y;
    }

    /** One flight on its way. */
    private final class Run {

        private final Shot shot;
        private double[] y;
        private double time;
        private final double startJ;

        Run(Shot shot, double[] y) {
            this.shot = shot;
            this.y = y;
            this.startJ = rigJ();
        }

        void go(FlightEquations equations, @Nullable StepHandler watcher, List<Stop> events) {
            DormandPrince853Integrator integrator =
                    new DormandPrince853Integrator(SHORTEST_STEP, LONGEST_STEP, absolute(), relatives());
            events.forEach(e -> integrator.addEventHandler(e, EVENT_CHECK, EVENT_PRECISION, 100));
            if (watcher != null) {
                integrator.addStepHandler(watcher);
            }
            double[] end = new double[Moment.SIZE];
            time = integrator.integrate(equations, time, y, LONGEST_SECONDS, end);
            y = end;
        }

        private double[] absolute() {
            double[] out = new double[Moment.SIZE];
            java.util.Arrays.fill(out, 100 * relative);
            return out;
        }

        private double[] relatives() {
            double[] out = new double[Moment.SIZE];
            java.util.Arrays.fill(out, relative);
            return out;
        }

        private double rigJ() {
            double v2 = y[3] * y[3] + y[4] * y[4] + y[5] * y[5];
            return shot.rig().massKg()
                    * (0.5 * v2 + Moment.GRAVITY * (y[1] + shot.start().heightM()));
        }

        Ledger ledger(FlightEquations equations) {
            int a = Moment.ACCOUNTS;
            Moment m = new Moment(y);
            double payout = shot.tackle().line().none() ? 0 : equations.doing(m).payout();
            double lineJ = 0.5 * shot.tackle().line().massPerMetre() * m.lengthM * payout * payout;
            return new Ledger(startJ, rigJ(), lineJ, y[a], y[a + 1], y[a + 2], y[a + 3]);
        }

        Flight flight(Stop apex, double tight, double peak, Ledger ledger) {
            Moment m = new Moment(y);
            double height = apex.happened() ? apex.height : begin(shot)[1];
            return new Flight(
                    Math.hypot(y[0], y[2]),
                    y[0],
                    y[2],
                    time,
                    height + shot.start().heightM(),
                    m.speed.getNorm(),
                    Math.atan2(-y[4], Math.hypot(y[3], y[5])),
                    m.bow.getNorm(),
                    m.lengthM - m.chordM,
                    tight,
                    peak,
                    ledger);
        }
    }

    /** Something that happens when a number goes through nought, the first time. */
    private static final class Stop implements EventHandler {

        private final ToDoubleFunction<double[]> number;
        private final boolean rising;
        private final boolean ends;
        private double seconds = Double.NaN;
        private double height = Double.NaN;

        Stop(ToDoubleFunction<double[]> number, boolean rising, boolean ends) {
            this.number = number;
            this.rising = rising;
            this.ends = ends;
        }

        boolean happened() {
            return !Double.isNaN(seconds);
        }

        @Override
        public void init(double t0, double[] y0, double t) {}

        @Override
        public double g(double t, double[] y) {
            return number.applyAsDouble(y);
        }

        @Override
        public Action eventOccurred(double t, double[] y, boolean increasing) {
            if (increasing != rising || happened()) {
                return Action.CONTINUE;
            }
            seconds = t;
            height = y[1];
            return ends ? Action.STOP : Action.CONTINUE;
        }

        @Override
        public void resetState(double t, double[] y) {}
    }

    /** The strongest pull so far. */
    private static final class Peak implements StepHandler {

        private final FlightEquations held;
        private double most;

        Peak(FlightEquations held) {
            this.held = held;
        }

        @Override
        public void init(double t0, double[] y0, double t) {}

        @Override
        public void handleStep(StepInterpolator step, boolean last) {
            most = Math.max(
                    most, held.doing(new Moment(step.getInterpolatedState())).pullN());
        }
    }

    /** Places at even times. */
    private static final class Sampler implements StepHandler {

        private final double every;
        private final double tip;
        private final List<Place> out;

        Sampler(double every, double tip, List<Place> out) {
            this.every = every;
            this.tip = tip;
            this.out = out;
        }

        @Override
        public void init(double t0, double[] y0, double t) {}

        @Override
        public void handleStep(StepInterpolator step, boolean last) {
            double t = every * Math.ceil(step.getPreviousTime() / every);
            for (; t < step.getCurrentTime(); t += every) {
                add(step, t);
            }
            if (last) {
                add(step, step.getCurrentTime());
            }
        }

        private void add(StepInterpolator step, double t) {
            step.setInterpolatedTime(t);
            double[] y = step.getInterpolatedState();
            out.add(new Place(t, Math.hypot(y[0], y[2]), y[1] + tip));
        }
    }
}
