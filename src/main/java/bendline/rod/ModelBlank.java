package bendline.rod;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Properties;

/**
 * A blank as a file describes it: one of the generic ones, or a rod that somebody measured.
 *
 * @param id short name in lower case
 * @param name for people
 * @param lengthM whole rod, metres
 * @param handleM butt cap to upper hand, metres
 * @param bending the part above the upper hand
 * @param use what it is for, for people
 */
public record ModelBlank(String id, String name, double lengthM, double handleM, Blank bending, String use) {

    /** What is unknown of a blank that is not measured. */
    static final double STIFFNESS_SD = 0.25;

    static final double MASS_SD = 0.25;

    private static final String STIFFNESS_SD_KEY = "stiffnessRelativeSd";

    static ModelBlank of(String id, Properties p) {
        double length = number(id, p, "lengthM", null);
        double handle = number(id, p, "handleM", null);
        double power = number(id, p, "stiffnessPower", null);
        Taper like = new Taper(0.5, power, number(id, p, "massPower", null));
        Taper taper = like.withTipStiffness(number(id, p, "tipStiffnessShare", null));
        Blank bending = new Blank(
                length - handle,
                number(id, p, "stiffnessNm2", null),
                number(id, p, STIFFNESS_SD_KEY, STIFFNESS_SD),
                number(id, p, "massKgPerM", null),
                MASS_SD,
                taper);
        return new ModelBlank(id, p.getProperty("name", id), length, handle, bending, p.getProperty("use", ""));
    }

    private static double number(
            String id, Properties p, String key, @org.jspecify.annotations.Nullable Double otherwise) {
        String text = p.getProperty(key);
        if (text == null && otherwise != null) {
            return otherwise;
        }
        try {
            return Double.parseDouble(text == null ? "" : text.strip());
        } catch (NumberFormatException e) {
            throw new BendException(
                    "The blank " + id + " has no number for " + key + "; give it one, or leave the blank out.");
        }
    }

    /**
     * Reads a blank's file.
     *
     * @throws BendException with a sentence for the user where it can't be used
     */
    public static ModelBlank read(Path file) {
        Properties p = new Properties();
        try (Reader in = Files.newBufferedReader(file)) {
            p.load(in);
        } catch (NoSuchFileException e) {
            throw new BendException("The blank's file " + file + " is not there; check the name.");
        } catch (IOException | IllegalArgumentException e) {
            throw new BendException("The blank's file " + file + " can't be read; it must be lines of NAME = NUMBER.");
        }
        try {
            return of(String.valueOf(file.getFileName()), p);
        } catch (IllegalArgumentException e) {
            throw new BendException("The blank's file " + file + " can't be used: " + e.getMessage() + ".");
        }
    }

    /** The text of a file from which {@link #read} gives this again. */
    public String text(String comment) {
        Blank b = bending;
        return String.format(
                Locale.ROOT,
                "# %s%nname = %s%nlengthM = %.3f%nhandleM = %.3f%nstiffnessNm2 = %.4g%nstiffnessRelativeSd = %.3f%n"
                        + "tipStiffnessShare = %.4g%nstiffnessPower = %s%nmassKgPerM = %.4g%nmassPower = %s%nuse = %s%n",
                comment,
                name,
                lengthM,
                handleM,
                b.stiffnessNm2(),
                b.stiffnessRelativeSd(),
                b.taper().stiffnessAt(1),
                b.taper().stiffnessPower(),
                b.massKgPerM(),
                b.taper().massPower(),
                use);
    }
}
