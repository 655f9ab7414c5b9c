package bendline.web;

import bendline.report.Reader;
import java.nio.file.Path;
import java.util.List;

/**
 * How to serve.
 *
 * @param book folder of the practice book
 * @param port 0 to 65535; 0 for any that is free
 * @param lan whether others on the network may come in
 * @param club whether everybody signs in
 * @param mostBytes the largest clip taken
 * @param mostPicturesBytes what the pictures to step through may take altogether
 * @param reader how numbers are written in what is shown of measures
 * @param workbench the command that runs {@link Workbench} in a process of its own
 * @param program the version that analyses are written down under
 */
public record ServeSettings(
        Path book,
        int port,
        boolean lan,
        boolean club,
        long mostBytes,
        long mostPicturesBytes,
        Reader reader,
        List<String> workbench,
        String program) {

    /** Checks ranges. */
    public ServeSettings {
        if (port < 0 || port > 65_535) {
            throw new IllegalArgumentException("port " + port + " is outside 0 to 65535");
        }
        if (mostBytes < 1) {
            throw new IllegalArgumentException("the largest clip must have at least one byte, not " + mostBytes);
        }
        if (mostPicturesBytes < 0) {
            throw new IllegalArgumentException("pictures can't take less than nothing, not " + mostPicturesBytes);
        }
        workbench = List.copyOf(workbench);
    }
}
