package bendline.benchmark;

import bendline.analysis.Analyser;
import bendline.analysis.Progress;
import bendline.footage.Footage;
import bendline.footage.LumaReader;
import bendline.report.MarkedClipCost;
import bendline.scene.Setup;
import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A piece of work in a process of its own, so that its peak memory can be told: {@code Errand decode CLIP} decodes every
 * frame to grey and lets it go, {@code Errand analyse CLIP} runs the whole analysis, {@code Errand mark CLIP}
 * writes the marked clip with its panel. Prints "took SECONDS CPU MIB".
 */
public final class Errand {

    private Errand() {}

    /** Runs it. */
    public static void main(String[] args) throws Exception {
        Path clip = Path.of(args[1]);
        long start = System.nanoTime();
        switch (args[0]) {
            case "decode" -> decode(clip);
            case "analyse" -> new Analyser().analyse(clip, Setup.NONE, Progress.SILENT);
            case "mark" -> MarkedClipCost.write(clip);
            default -> throw new IllegalArgumentException("no errand " + args[0]);
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        double cpu = ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime() / 1e9;
        System.out.printf(Locale.ROOT, "took %.3f %.3f %.1f%n", seconds, cpu, Load.peakMiBOfThisProcess());
    }

    private static void decode(Path clip) {
        try (LumaReader reader = Footage.open(clip).lumas()) {
            while (reader.next() != null) {
                // decoding is all there is to do
            }
        }
    }
}
