package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Native code writes past System.err, so only another process can be watched. */
class NativeLogTest {

    @TempDir
    Path folder;

    /** Writes a clip, spoils it, decodes it and makes OpenCV complain. */
    public static final class Chatter {

        private Chatter() {}

        /** @param args a folder to work in, and "verbose" or "quiet" */
        public static void main(String[] args) throws IOException {
            if (args[1].equals("verbose")) {
                NativeLog.verbose();
            } else {
                NativeLog.quiet();
            }
            Path file = BarClip.write(Path.of(args[0], "c.mp4"), BarClip.steady(30, 30));
            Mp4Surgery surgery = new Mp4Surgery(file);
            surgery.spoilPicture(10);
            Footage.open(surgery.save(file)).survey(done -> {});
            try (Mat empty = new Mat();
                    Mat target = new Mat()) {
                opencv_imgproc.cvtColor(empty, target, opencv_imgproc.COLOR_BGR2GRAY);
            } catch (RuntimeException expected) {
                System.out.println("complained");
            }
        }
    }

    private Process start(String mode) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Chatter.class.getName(),
                        Files.createDirectory(folder.resolve(mode)).toString(),
                        mode)
                .redirectOutput(folder.resolve(mode + ".out").toFile())
                .redirectError(folder.resolve(mode + ".err").toFile());
        // Some builds of OpenCV print errors by themselves, others only when told to.
        builder.environment().put("OPENCV_DUMP_ERRORS", "1");
        return builder.start();
    }

    private String standardError(Process process, String mode) throws IOException, InterruptedException {
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isZero();
        assertThat(folder.resolve(mode + ".out")).content().contains("complained");
        return Files.readString(folder.resolve(mode + ".err"));
    }

    @Test
    void nothingReachesStandardErrorUnlessAskedFor() throws IOException, InterruptedException {
        Process quiet = start("quiet");
        Process verbose = start("verbose");
        assertThat(standardError(quiet, "quiet")).isEmpty();
        assertThat(standardError(verbose, "verbose")).contains("h264").contains("OpenCV");
    }
}
