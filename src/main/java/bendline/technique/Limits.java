package bendline.technique;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.TreeSet;

/** All limits of the findings, from {@code limits.properties} beside this class, and a coach's own in their place. */
public final class Limits {

    private static final String FILE = "limits.properties";
    private static final String LIMIT = ".limit";

    private final Map<String, Limit> byId;

    private Limits(Map<String, Limit> byId) {
        this.byId = byId;
    }

    /** The limits that come with the program. */
    public static Limits standard() {
        try (InputStream in = Limits.class.getResourceAsStream(FILE)) {
            Objects.requireNonNull(in, FILE + " is missing from the program");
            return new Limits(parse(read(new InputStreamReader(in, StandardCharsets.UTF_8))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * These limits with some moved, by a file of lines {@code finding.word.limit = number}.
     *
     * @throws IllegalArgumentException if the file can't be read, or names a limit that there is not, or what stands there is no
     *     number
     */
    public Limits overriddenBy(Path file) {
        Properties own;
        try (Reader in = Files.newBufferedReader(file)) {
            own = read(in);
        } catch (IOException e) {
            throw new IllegalArgumentException("the limits file " + file + " cannot be read", e);
        }
        Map<String, Limit> out = new LinkedHashMap<>(byId);
        for (String key : new TreeSet<>(own.stringPropertyNames())) {
            String id = key.endsWith(LIMIT) ? key.substring(0, key.length() - LIMIT.length()) : key;
            Limit old = out.get(id);
            if (old == null || !key.endsWith(LIMIT)) {
                throw new IllegalArgumentException("the limits file " + file + " names \"" + key
                        + "\", which is not the limit of any finding; write for example "
                        + byId.keySet().iterator().next()
                        + LIMIT);
            }
            out.put(id, old.moved(number(key, own.getProperty(key))));
        }
        return new Limits(out);
    }

    /** Every limit, in the order of the alphabet. */
    public Collection<Limit> all() {
        return byId.values();
    }

    /**
     * A limit by its id.
     *
     * @throws IllegalArgumentException if there is none of that name
     */
    public Limit limit(String id) {
        Limit l = byId.get(id);
        if (l == null) {
            throw new IllegalArgumentException("no limit named " + id);
        }
        return l;
    }

    private static Properties read(Reader in) throws IOException {
        Properties p = new Properties();
        p.load(in);
        return p;
    }

    private static Map<String, Limit> parse(Properties p) {
        Map<String, Limit> out = new LinkedHashMap<>();
        for (String key : new TreeSet<>(p.stringPropertyNames())) {
            if (key.endsWith(LIMIT)) {
                String id = key.substring(0, key.length() - LIMIT.length());
                out.put(id, one(p, id));
            }
        }
        return out;
    }

    private static Limit one(Properties p, String id) {
        String worse = text(p, id + ".worse");
        if (!worse.equals("above") && !worse.equals("below")) {
            throw new IllegalArgumentException(id + ".worse must be above or below, got " + worse);
        }
        return new Limit(
                id,
                text(p, id + ".measure"),
                worse.equals("above"),
                number(id + LIMIT, text(p, id + LIMIT)),
                number(id + ".worst", text(p, id + ".worst")),
                text(p, id + ".unit"),
                text(p, id + ".reason"),
                text(p, id + ".source"));
    }

    private static String text(Properties p, String key) {
        String value = p.getProperty(key);
        if (value == null) {
            throw new IllegalArgumentException("the limits file has no " + key);
        }
        return value.strip();
    }

    private static double number(String key, String text) {
        try {
            return Double.parseDouble(text.strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(key + " must be a number, got \"" + text + "\"", e);
        }
    }
}
