package bendline.web;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;

/** An address as a square that phones read. */
final class QrCode {

    private QrCode() {}

    private static BitMatrix matrix(String text) {
        try {
            return new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0);
        } catch (WriterException e) {
            throw new IllegalArgumentException("the text is too long for a QR code: " + text, e);
        }
    }

    /** For a terminal: two rows of squares a line, light on dark terminals and dark on light ones both read. */
    static String text(String address) {
        BitMatrix m = matrix(address);
        StringBuilder out = new StringBuilder();
        for (int y = 0; y < m.getHeight(); y += 2) {
            for (int x = 0; x < m.getWidth(); x++) {
                boolean top = m.get(x, y);
                boolean low = y + 1 < m.getHeight() && m.get(x, y + 1);
                out.append(top ? (low ? ' ' : '▄') : (low ? '▀' : '█'));
            }
            out.append('\n');
        }
        return out.toString();
    }

    /** For a page: always dark on light, whatever the page's colours. */
    static String svg(String address) {
        BitMatrix m = matrix(address);
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < m.getHeight(); y++) {
            for (int x = 0; x < m.getWidth(); x++) {
                if (m.get(x, y)) {
                    path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
                }
            }
        }
        return "<svg class=\"qr\" role=\"img\" aria-label=\"QR code of the address\" viewBox=\"0 0 " + m.getWidth()
                + " "
                + m.getHeight() + "\"><rect width=\"100%\" height=\"100%\" fill=\"#fff\"/><path fill=\"#000\" d=\""
                + path
                + "\"/></svg>\n";
    }
}
