package bendline.benchmark;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * How the tracker errs on one clip: what {@link NoiseFit} measured on it and {@link NoisyFilm} puts onto others. Errors come in three
 * kinds: small ones, partly independent from frame to frame and partly drifting; strays, of the wrong thing; and frames in which
 * nothing is seen. "Calm" is more than 0.4 s before or after a release, "fast" the rest.
 *
 * @param clip on which it was measured
 * @param tip the tip's, pixels
 * @param butt the blank's direction at the grip, degrees
 * @param rig the rig's until the release, pixels
 * @param flight the rig's after it, pixels; only its gaps count
 * @param hand the upper hand's along the cast, pixels
 */
record TraceNoise(String clip, Part tip, Part butt, Part rig, Part flight, Part hand) {

    private static final String FILE = "trace-noise.csv";

    /**
     * What errs.
     *
     * @param sd of the small errors, per coordinate
     * @param drifting share of their variance that drifts
     * @param driftSeconds in which it forgets itself
     * @param stated what the tracker says over what it should say
     * @param calmGap share of the calm frames in which it is not seen
     * @param fastGap the same of the fast ones
     * @param gapSeconds mean length of such a gap
     * @param calmStray share of the calm frames seen in which it is wrong
     * @param fastStray the same of the fast ones
     * @param straySeconds mean length of such a stretch
     * @param stray by how much it is then wrong, median
     */
    record Part(
            double sd,
            double drifting,
            double driftSeconds,
            double stated,
            double calmGap,
            double fastGap,
            double gapSeconds,
            double calmStray,
            double fastStray,
            double straySeconds,
            double stray) {

        private static final int NUMBERS = 11;

        private String text() {
            double[] all = {
                sd,
                drifting,
                driftSeconds,
                stated,
                calmGap,
                fastGap,
                gapSeconds,
                calmStray,
                fastStray,
                straySeconds,
                stray
            };
            StringBuilder out = new StringBuilder();
            for (double v : all) {
                out.append(String.format(Locale.ROOT, ",%.4g", Double.isNaN(v) ? 0 : v));
            }
            return out.toString();
        }

        private static Part of(double[] v) {
            return new Part(v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], v[8], v[9], v[10]);
        }
    }

    /** One line of the file. */
    String line() {
        return clip + tip.text() + butt.text() + rig.text() + flight.text() + hand.text();
    }

    /** What was measured, one entry a clip. */
    static List<TraceNoise> measured() {
        List<TraceNoise> out = new ArrayList<>();
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(TraceNoise.class.getResourceAsStream(FILE), FILE), StandardCharsets.UTF_8))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (!line.startsWith("#") && !line.isBlank()) {
                    out.add(parse(line));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out;
    }

    private static TraceNoise parse(String line) {
        String[] cells = line.split(",");
        double[] v =
                Arrays.stream(cells).skip(1).mapToDouble(Double::parseDouble).toArray();
        Part[] parts = new Part[v.length / Part.NUMBERS];
        for (int i = 0; i < parts.length; i++) {
            parts[i] = Part.of(Arrays.copyOfRange(v, i * Part.NUMBERS, (i + 1) * Part.NUMBERS));
        }
        return new TraceNoise(cells[0], parts[0], parts[1], parts[2], parts[3], parts[4]);
    }
}
