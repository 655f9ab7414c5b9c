package bendline.simulate;

import java.util.ArrayList;
import java.util.List;

/**
 * The computed motion of hand, blank, line and rig over a clip, sampled densely; what pictures and truth are made from.
 * Metres in the plane of the cast, x towards the water from the middle between the feet, y up from the ground there.
 */
final class Motion {

    /** Numbers kept per sample before the nodes: t, hand x, y, vx, angle, rate, tip vx, vy, rig x, y, vx, vy, pull. */
    private static final int HEAD = 13;

    /** One moment: all that a picture needs. */
    record Moment(
            double t,
            double handX,
            double handY,
            double handVx,
            double angle,
            double rate,
            double tipVx,
            double tipVy,
            double rigX,
            double rigY,
            double rigVx,
            double rigVy,
            double tension,
            RigLine.State line,
            double[] nodeX,
            double[] nodeY) {

        double tipX() {
            return nodeX[nodeX.length - 1];
        }

        double tipY() {
            return nodeY[nodeY.length - 1];
        }

        double tipSpeed() {
            return Math.hypot(tipVx, tipVy);
        }

        /** Distance upper hand to tip over free length. */
        double chordRatio(double freeLength) {
            return Math.hypot(tipX() - handX, tipY() - handY) / freeLength;
        }
    }

    /** A line let go: when, and how the rig left. */
    record Launch(int cast, double t, double speed, double angle) {}

    /** A forward stroke begun: when the hands set off. */
    record Push(int cast, double t) {}

    private final int links;
    private final double step;
    private final double start;
    private final List<double[]> samples = new ArrayList<>();
    private final List<RigLine.State> lines = new ArrayList<>();
    private final List<Launch> launches = new ArrayList<>();
    private final List<Push> pushes = new ArrayList<>();
    private double worstBalance;
    private double workIn;

    Motion(int links, double start, double step) {
        this.links = links;
        this.start = start;
        this.step = step;
    }

    void add(HandPose hand, ChainState state, double linkM, double tension, RigLine.State line) {
        double[] s = new double[HEAD + 2 * (links + 1)];
        double x = hand.x();
        double y = hand.y();
        double vx = hand.vx();
        double vy = hand.vy();
        s[HEAD] = x;
        s[HEAD + links + 1] = y;
        for (int i = 0; i < links; i++) {
            double c = Math.cos(state.theta[i]) * linkM;
            double w = Math.sin(state.theta[i]) * linkM;
            x += c;
            y += w;
            vx -= w * state.omega[i];
            vy += c * state.omega[i];
            s[HEAD + i + 1] = x;
            s[HEAD + links + 2 + i] = y;
        }
        double[] head = {
            start + samples.size() * step,
            hand.x(),
            hand.y(),
            hand.vx(),
            hand.angle(),
            hand.rate(),
            vx,
            vy,
            state.rigX,
            state.rigY,
            state.rigVx,
            state.rigVy,
            tension
        };
        System.arraycopy(head, 0, s, 0, HEAD);
        samples.add(s);
        lines.add(line);
    }

    void launched(Launch launch) {
        launches.add(launch);
    }

    void pushed(Push push) {
        pushes.add(push);
    }

    void balanced(double workIn, double worst) {
        this.workIn = workIn;
        this.worstBalance = worst;
    }

    /** The releases, in order. */
    List<Launch> launches() {
        return List.copyOf(launches);
    }

    /** The forward strokes, in order. */
    List<Push> pushes() {
        return List.copyOf(pushes);
    }

    /** Work of the hands in joules over the whole motion. */
    double workIn() {
        return workIn;
    }

    /** Largest gap in the energy books, joules. */
    double worstBalance() {
        return worstBalance;
    }

    int size() {
        return samples.size();
    }

    double stepSeconds() {
        return step;
    }

    /** The sample at or before a time. */
    int indexAt(double t) {
        return Math.max(0, Math.min(size() - 1, (int) Math.floor((t - start) / step + 1e-9)));
    }

    /** Time of a sample, seconds. */
    double time(int sample) {
        return samples.get(sample)[0];
    }

    /** Speed of the upper hand towards the water at a sample, m/s. */
    double handVx(int sample) {
        return samples.get(sample)[3];
    }

    /** Butt angle at a sample, radians. */
    double angle(int sample) {
        return samples.get(sample)[4];
    }

    /** Rate of the butt angle at a sample, radians per second. */
    double rate(int sample) {
        return samples.get(sample)[5];
    }

    /** Speed of the tip at a sample, m/s. */
    double tipSpeed(int sample) {
        return Math.hypot(samples.get(sample)[6], samples.get(sample)[7]);
    }

    /** Pull of the line at a sample, newtons. */
    double tension(int sample) {
        return samples.get(sample)[12];
    }

    /** What the line does at a sample. */
    RigLine.State line(int sample) {
        return lines.get(sample);
    }

    /** Upper hand to tip at a sample, metres. */
    double chord(int sample) {
        double[] s = samples.get(sample);
        return Math.hypot(s[HEAD + links] - s[HEAD], s[s.length - 1] - s[HEAD + links + 1]);
    }

    /** A stored sample. */
    Moment sample(int index) {
        return moment(samples.get(index), lines.get(index));
    }

    /** The moment at a time, straight between samples; held at the ends. */
    Moment at(double t) {
        int i = Math.min(indexAt(t), size() - 2);
        double f = Math.max(0, Math.min(1, (t - start) / step - i));
        double[] a = samples.get(i);
        double[] b = samples.get(i + 1);
        double[] s = new double[a.length];
        for (int k = 0; k < s.length; k++) {
            s[k] = a[k] + f * (b[k] - a[k]);
        }
        return moment(s, lines.get(i));
    }

    private Moment moment(double[] s, RigLine.State line) {
        double[] nx = java.util.Arrays.copyOfRange(s, HEAD, HEAD + links + 1);
        double[] ny = java.util.Arrays.copyOfRange(s, HEAD + links + 1, s.length);
        return new Moment(
                s[0], s[1], s[2], s[3], s[4], s[5], s[6], s[7], s[8], s[9], s[10], s[11], s[12], line, nx, ny);
    }
}
