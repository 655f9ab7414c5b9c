package bendline.stroke;

import bendline.scene.Mark;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Moments of one cast that a person put on frames. They go before what the program finds, and every measure is read from them.
 *
 * @param seconds real time of those frames
 */
record GivenMoments(Map<EventKind, Double> seconds) {

    static final String BASIS = "put on this frame by hand";

    /** How well a frame says when something is, in steps between frames: before or after it by half a step. */
    private static final double SD_STEPS = 0.5;

    /** Copies the map. */
    GivenMoments {
        seconds = Map.copyOf(seconds);
    }

    /**
     * What marks say of each cast.
     *
     * @param marks the later in the list counts where two say something of the same moment
     * @param fastest when the rod turns fastest in each cast, real seconds
     * @param time when each frame was taken, real seconds
     * @param factor clip seconds in a real second
     */
    static List<GivenMoments> of(List<Mark> marks, double[] fastest, double[] time, double factor) {
        List<Map<EventKind, Double>> out = new ArrayList<>();
        for (int i = 0; i < fastest.length; i++) {
            out.add(new EnumMap<>(EventKind.class));
        }
        for (Mark mark : marks) {
            double at = time[nearest(time, mark.seconds() / factor)];
            for (String id : mark.moments()) {
                EventKind.of(id)
                        .filter(kind -> fastest.length > 0)
                        .ifPresent(kind -> out.get(cast(kind, at, fastest)).put(kind, at));
            }
        }
        return out.stream().map(GivenMoments::new).toList();
    }

    /** The cast that is nearest; a rig may fly for so long that the next cast is nearer to its end. */
    private static int cast(EventKind kind, double at, double[] fastest) {
        int i = nearest(fastest, at);
        return kind == EventKind.CLIP_NOD && i > 0 && fastest[i] > at ? i - 1 : i;
    }

    private static int nearest(double[] times, double at) {
        int best = 0;
        for (int i = 1; i < times.length; i++) {
            if (Math.abs(times[i] - at) < Math.abs(times[best] - at)) {
                best = i;
            }
        }
        return best;
    }

    /** The moment as it was given, else as it was found. */
    Found or(EventKind kind, Found found, double step) {
        Double at = seconds.get(kind);
        return at == null ? found : new Found(at, sd(step), BASIS);
    }

    /** 68 % uncertainty, real seconds. */
    static double sd(double step) {
        return SD_STEPS * step;
    }

    /** The same as far off as it may really lie. */
    Map<EventKind, Double> drawn(double step, Random random) {
        Map<EventKind, Double> out = new EnumMap<>(EventKind.class);
        for (EventKind kind : EventKind.values()) {
            Double at = seconds.get(kind);
            if (at != null) {
                out.put(kind, at + sd(step) * random.nextGaussian());
            }
        }
        return out;
    }
}
