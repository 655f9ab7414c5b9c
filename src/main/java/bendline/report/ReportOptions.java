package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.body.Faces;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a report folder is to hold beyond the usual.
 *
 * @param veiled where faces may be in each frame, to be made unrecognisable; empty for none
 * @param reader how numbers are written in prose
 * @param pdf whether {@code report.pdf} is written too
 * @param marked what the marked clip shows
 * @param day on which it was analysed, for the head of the page; null to leave it out
 * @param clipName what people call the clip; null where that is the name of its file
 */
public record ReportOptions(
        Faces veiled,
        Reader reader,
        boolean pdf,
        MarkedOptions marked,
        @Nullable LocalDate day,
        @Nullable String clipName) {

    /** The usual. */
    public static final ReportOptions PLAIN =
            new ReportOptions(new Faces(List.of()), Reader.PLAIN, false, MarkedOptions.PLAIN, null, null);

    /** With the usual in it. */
    public static ReportOptions of(Reader reader, @Nullable LocalDate day) {
        return new ReportOptions(PLAIN.veiled, reader, false, PLAIN.marked, day, null);
    }

    /** The usual with faces made unrecognisable. */
    public ReportOptions veiling(Faces faces) {
        return new ReportOptions(faces, reader, pdf, marked, day, clipName);
    }

    /** The same for a clip that people call otherwise than its file. */
    public ReportOptions calling(String name) {
        return new ReportOptions(veiled, reader, pdf, marked, day, name);
    }

    /** What the clip is called on the page. */
    String name(ClipAnalysis analysis) {
        return clipName == null ? analysis.clip().getFileName().toString() : clipName;
    }
}
