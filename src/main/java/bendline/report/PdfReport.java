package bendline.report;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Turns the paged form of the page into {@code report.pdf}: A4, text that can be selected and searched, charts as vectors.
 * Nothing is fetched: the page holds its pictures, and every other address is refused.
 */
final class PdfReport {

    /** The face that comes with the PDF library (SIL Open Font Licence), so that the letters need nothing of the system. */
    private static final String FACE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private PdfReport() {}

    /**
     * Writes the file.
     *
     * @param page sound XML
     * @throws IOException where it can't be laid out or written
     */
    static void write(String page, Path file) throws IOException {
        XRLog.setLoggingEnabled(false);
        try (OutputStream out = Files.newOutputStream(file);
                BatikSVGDrawer drawer = new BatikSVGDrawer()) {
            PdfRendererBuilder builder = new PdfRendererBuilder();
            builder.useFastMode();
            builder.useSVGDrawer(drawer);
            FSSupplier<InputStream> face = PdfReport::face;
            builder.useFont(face, "Bendline Sans", 400, FontStyle.NORMAL, true);
            builder.useUriResolver((base, uri) -> uri != null && uri.startsWith("data:") ? uri : null);
            builder.withProducer("Bendline");
            builder.withHtmlContent(page, null);
            builder.toStream(out);
            builder.run();
        }
    }

    private static InputStream face() {
        InputStream in = PDDocument.class.getResourceAsStream(FACE);
        if (in == null) {
            throw new IllegalStateException("the typeface is missing from the program");
        }
        return in;
    }
}
