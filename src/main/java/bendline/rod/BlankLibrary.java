package bendline.rod;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Properties;

/** The generic blanks that come with the program, light to strong. None is a product. */
public final class BlankLibrary {

    private static final List<ModelBlank> ALL = load();

    private BlankLibrary() {}

    /** All of them, light to strong. */
    public static List<ModelBlank> all() {
        return ALL;
    }

    /**
     * One of them.
     *
     * @throws BendException with a sentence for the user where there is none of that name
     */
    public static ModelBlank named(String id) {
        return ALL.stream()
                .filter(b -> b.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new BendException("There is no blank named \"" + id + "\"; did you mean "
                        + nearest(id) + "? The command rod lists them."));
    }

    private static String nearest(String id) {
        return ALL.stream()
                .map(ModelBlank::id)
                .min(Comparator.comparingInt(other -> distance(id, other)))
                .orElse("");
    }

    /**
     * The one nearest to a rod in length and, where its stiffness is known, in power.
     *
     * @param lengthM whole rod or its part above the hand, metres
     * @param stiffnessNm2 at the hand; NaN where not known
     */
    public static ModelBlank like(double lengthM, double stiffnessNm2) {
        return ALL.stream()
                .min(Comparator.comparingDouble(b -> {
                    double power = Double.isNaN(stiffnessNm2)
                            ? Math.abs(Math.log(b.bending().stiffnessNm2() / 130))
                            : Math.abs(Math.log(b.bending().stiffnessNm2() / stiffnessNm2));
                    return power + 2 * Math.abs(b.bending().lengthM() / lengthM - 1);
                }))
                .orElseThrow();
    }

    private static List<ModelBlank> load() {
        List<ModelBlank> out = new ArrayList<>();
        try (BufferedReader index =
                new BufferedReader(new InputStreamReader(open("index.txt"), StandardCharsets.UTF_8))) {
            for (String id = index.readLine(); id != null; id = index.readLine()) {
                Properties p = new Properties();
                try (InputStreamReader in =
                        new InputStreamReader(open(id.strip() + ".properties"), StandardCharsets.UTF_8)) {
                    p.load(in);
                }
                out.add(ModelBlank.of(id.strip(), p));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the generic blanks can't be read from the program", e);
        }
        return List.copyOf(out);
    }

    private static InputStream open(String name) throws IOException {
        InputStream in = BlankLibrary.class.getResourceAsStream("models/" + name);
        if (in == null) {
            throw new IOException("models/" + name + " is missing from the program");
        }
        return in;
    }

    /** Single letters to change, add or drop until one word is the other (Levenshtein 1966). */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int k = 0; k < row.length; k++) {
            row[k] = k;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int k = 1; k < row.length; k++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(k - 1) ? 0 : 1);
                diagonal = row[k];
                row[k] = Math.min(change, Math.min(row[k], row[k - 1]) + 1);
            }
        }
        return row[b.length()];
    }
}
