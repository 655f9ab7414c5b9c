package bendline.report;

import java.util.Base64;

/**
 * One frame with what was followed drawn in, cropped.
 *
 * @param frame decoded frame
 * @param seconds clip time
 * @param file its name under the output folder
 * @param jpeg a smaller copy for the page
 * @param width of that copy, pixels
 * @param height of that copy, pixels
 * @param alt what it shows, for who can't see it
 */
record Still(int frame, double seconds, String file, byte[] jpeg, int width, int height, String alt) {

    /** The copy as an address that needs no network. */
    String address() {
        return "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg);
    }

    /** Puts it on a page; on a screen its room is known before it is drawn. */
    void write(Html html, String words) {
        String alt = html.reader().say(words);
        if (html.paged()) {
            html.single("img", "src", address(), "alt", alt);
        } else {
            html.single(
                    "img",
                    "src",
                    address(),
                    "width",
                    Integer.toString(width),
                    "height",
                    Integer.toString(height),
                    "alt",
                    alt);
        }
    }
}
