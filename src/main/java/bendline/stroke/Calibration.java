package bendline.stroke;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;

/**
 * How much farther moments lie off than their clues alone say, from {@code moments.properties} beside this class: traces drift and
 * stray together over many frames, which no spread of one trace shows. Fitted on simulated casts with the tracker's measured
 * errors.
 */
final class Calibration {

    private static final String FILE = "moments.properties";

    /** As fitted. */
    static final Calibration FITTED = read();

    private final Map<EventKind, Part> parts;

    /**
     * What is made of a stated uncertainty.
     *
     * @param factor on what the clues say
     * @param frames that come on top, in steps between frames
     * @param seconds that come on top, real time
     */
    private record Part(double factor, double frames, double seconds) {

        double least(double step) {
            return Math.hypot(frames * step, seconds);
        }
    }

    private Calibration(Map<EventKind, Part> parts) {
        this.parts = parts;
    }

    private static Calibration read() {
        Properties p = new Properties();
        try (InputStream in = Calibration.class.getResourceAsStream(FILE)) {
            Objects.requireNonNull(in, FILE + " is missing from the program");
            p.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<EventKind, Part> out = new EnumMap<>(EventKind.class);
        for (EventKind kind : EventKind.values()) {
            String[] cells = Objects.requireNonNull(p.getProperty(kind.id()), kind.id() + " is missing from " + FILE)
                    .strip()
                    .split("\\s+");
            out.put(
                    kind,
                    new Part(Double.parseDouble(cells[0]), Double.parseDouble(cells[1]), Double.parseDouble(cells[2])));
        }
        return new Calibration(out);
    }

    /** The 68 % uncertainty of a moment whose clues leave it uncertain by {@code sd}, real seconds. */
    double total(EventKind kind, double sd, double step) {
        Part p = parts.get(kind);
        return Math.hypot(p.factor * sd, p.least(step));
    }

    /** A found moment with the uncertainty it really has. */
    Found of(EventKind kind, Found f, double step) {
        return f.known() ? new Found(f.value(), total(kind, f.sd(), step), f.basis()) : f;
    }

    /**
     * A drawn moment as far off as it may really lie.
     *
     * @param nominal the moment itself
     * @param drawn the same on a drawn curve
     * @param chance a standard normal number, for what comes on top
     * @param unseen how long the rod was out of sight about it, real seconds: it may then lie anywhere in there
     */
    double drawn(EventKind kind, double nominal, double drawn, double step, double chance, double unseen) {
        Part p = parts.get(kind);
        double top = Math.hypot(p.least(step), unseen / Math.sqrt(12));
        return nominal + p.factor * (drawn - nominal) + top * chance;
    }
}
