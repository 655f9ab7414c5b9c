package bendline.signal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;

/** Published data sets that are kept beside this checkout and are not ours to copy into it. */
final class SharedData {

    private static final Pattern NUMBERS = Pattern.compile("[-+0-9.eE\\s]+");

    private SharedData() {}

    /** The rows of numbers of a file, {@code [column][row]}; skips the running test where the file is absent. */
    static double[][] columns(String file) {
        Path path = Path.of(System.getProperty("bendline.shared", "../shared"), "checks-data", file);
        Assumptions.assumeTrue(
                Files.isRegularFile(path), file + " is not beside this checkout, nothing to compare with");
        try {
            List<String[]> rows = Files.readAllLines(path).stream()
                    .filter(line -> !line.isBlank() && NUMBERS.matcher(line).matches() && line.matches(".*[0-9].*"))
                    .map(line -> line.strip().split("\\s+"))
                    .toList();
            double[][] out = new double[rows.get(0).length][rows.size()];
            for (int r = 0; r < rows.size(); r++) {
                for (int c = 0; c < out.length; c++) {
                    out[c][r] = Double.parseDouble(rows.get(r)[c]);
                }
            }
            return out;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
