package bendline.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What a piece of work takes when a Java machine of its own does it.
 *
 * @param seconds wall clock of the work, without starting the machine
 * @param cpuSeconds processor time of the whole process
 * @param peakMiB largest resident memory of the whole process; NaN where the system doesn't tell
 */
public record Load(double seconds, double cpuSeconds, double peakMiB) {

    /**
     * Runs {@link Errand} in a child process with this process's class path and options for memory.
     *
     * @throws IOException if it fails; the message holds what it printed
     */
    static Load of(String... errand) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Errand.class.getName()));
        command.addAll(List.of(errand));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IOException("the errand " + List.of(errand) + " failed: " + said);
        }
        String[] words = said.substring(said.lastIndexOf("took ") + 5).strip().split(" ");
        return new Load(Double.parseDouble(words[0]), Double.parseDouble(words[1]), Double.parseDouble(words[2]));
    }

    /** Largest resident memory of this process so far, MiB; NaN where {@code /proc} doesn't tell. */
    static double peakMiBOfThisProcess() throws IOException {
        Path status = Path.of("/proc/self/status");
        if (Files.exists(status)) {
            for (String line : Files.readAllLines(status)) {
                if (line.startsWith("VmHWM:")) {
                    return Double.parseDouble(line.replaceAll("[^0-9]", "")) / 1024;
                }
            }
        }
        return Double.NaN;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.1f s (%.1f s of processor), %.0f MiB", seconds, cpuSeconds, peakMiB);
    }
}
