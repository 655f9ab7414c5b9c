package bendline.benchmark;

import java.util.List;

/**
 * A clip of which everything is known.
 *
 * @param name short name
 * @param width upright picture, pixels
 * @param height upright picture, pixels
 * @param frames one entry per frame, by time
 * @param casts in order of time; empty where nobody casts
 */
public record TruthClip(String name, int width, int height, List<TruthFrame> frames, List<TruthCast> casts) {

    /** Copies the lists. */
    public TruthClip {
        frames = List.copyOf(frames);
        casts = List.copyOf(casts);
        if (frames.size() < 2) {
            throw new IllegalArgumentException(name + " has " + frames.size() + " frames of truth");
        }
    }

    /**
     * The frame of the truth that is shown at a clip time.
     *
     * @throws IllegalArgumentException if there is none within half a step: clip and truth do not belong together
     */
    public TruthFrame at(double seconds) {
        double step = (frames.get(frames.size() - 1).seconds() - frames.get(0).seconds()) / (frames.size() - 1);
        TruthFrame best = frames.get(0);
        for (TruthFrame f : frames) {
            if (Math.abs(f.seconds() - seconds) < Math.abs(best.seconds() - seconds)) {
                best = f;
            }
        }
        if (Math.abs(best.seconds() - seconds) > step / 2) {
            throw new IllegalArgumentException("the truth of " + name + " knows no frame at " + seconds + " s");
        }
        return best;
    }
}
