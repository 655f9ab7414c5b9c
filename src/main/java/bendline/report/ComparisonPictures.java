package bendline.report;

import java.util.List;

/**
 * What there is to see of a comparison.
 *
 * @param fans the two fans, wide and narrow; empty where they can't be drawn
 * @param lines the time lines, wide and narrow; empty where they can't be drawn
 * @param stillsA film strip of A
 * @param stillsB film strip of B
 * @param shownA name of the cast of A that stands for its set; empty for none
 * @param shownB name of the cast of B
 * @param film whether the side-by-side clip is there
 */
record ComparisonPictures(
        List<String> fans,
        List<String> lines,
        List<Still> stillsA,
        List<Still> stillsB,
        String shownA,
        String shownB,
        boolean film) {

    /** Copies the lists. */
    ComparisonPictures {
        fans = List.copyOf(fans);
        lines = List.copyOf(lines);
        stillsA = List.copyOf(stillsA);
        stillsB = List.copyOf(stillsB);
    }
}
