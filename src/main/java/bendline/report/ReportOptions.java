package bendline.report;

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
 */
public record ReportOptions(
        Faces veiled,
        Reader reader,
        boolean pdf,
        MarkedOptions marked,
        @Nullable LocalDate day) {

    /** The usual. */
    public static final ReportOptions PLAIN =
            new ReportOptions(new Faces(List.of()), Reader.PLAIN, false, MarkedOptions.PLAIN, null);

    /** The usual with faces made unrecognisable. */
    ReportOptions veiling(Faces faces) {
        return new ReportOptions(faces, reader, pdf, marked, day);
    }
}
