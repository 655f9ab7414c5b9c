package bendline.report;

import java.util.List;

/** The pictures of a comparison on its page. */
final class ComparisonPicturesSection {

    private final ComparisonPictures pictures;
    private final Html html;

    ComparisonPicturesSection(ComparisonPictures pictures, Html html) {
        this.pictures = pictures;
        this.html = html;
    }

    void write() {
        if (!pictures.lines().isEmpty()) {
            chart(
                    "All casts over time",
                    pictures.lines(),
                    "Real time from the release. Grey, broken: A; rust, whole: B. Line: the middle cast; band: the middle two"
                            + " thirds of the casts. A line breaks off where fewer than half of the casts were seen.");
        }
        String pair = "A by " + pictures.shownA() + ", B by " + pictures.shownB()
                + ", each the cast nearest to the middle of its set.";
        if (!pictures.fans().isEmpty()) {
            chart(
                    "How the blank bent",
                    pictures.fans(),
                    "Both at the same scale, from where the hand was at the start of the push, until the rod is straight. Grey,"
                            + " broken: A; rust, whole: B; thick: most bend. " + pair);
        }
        films(pair);
    }

    private void chart(String heading, List<String> drawings, String caption) {
        html.open("section");
        html.leaf("h2", heading);
        html.open("figure", "class", "chart");
        html.open("div", "class", ChartSize.WIDE.id())
                .raw(Palette.themed(html.reader().drawn(drawings.get(0))))
                .close();
        html.open("div", "class", ChartSize.NARROW.id())
                .raw(Palette.themed(html.reader().drawn(drawings.get(1))))
                .close();
        html.leaf("figcaption", caption);
        html.close().close();
    }

    private void films(String pair) {
        if (pictures.stillsA().isEmpty() || pictures.stillsB().isEmpty()) {
            return;
        }
        html.open("section");
        html.leaf("h2", "Frame by frame about the release");
        html.leaf("p", "Above A, below B; rods are shown equally long and the water is to the right. " + pair);
        html.open("div", "class", "films", "tabindex", "0", "role", "region", "aria-label", "Frames of both casts");
        for (double time : FilmStrip.TIMES) {
            figure("A", pictures.stillsA(), time);
            figure("B", pictures.stillsB(), time);
        }
        html.close();
        if (pictures.film()) {
            html.open("p");
            html.text("Side by side, let go at the same moment, at quarter speed: ");
            html.leaf("a", "side-by-side.mp4", "href", "side-by-side.mp4");
            html.text(", in the same folder as this page.");
            html.close();
        }
        html.close();
    }

    private void figure(String letter, List<Still> stills, double time) {
        html.open("figure", "class", "frame");
        String caption = letter
                + (time == 0 ? ", release" : Words.of(", %+.0f ms", 1000 * time).replace('-', '−'));
        stills.stream()
                .filter(s -> s.seconds() == time)
                .findFirst()
                .ifPresent(s -> html.single(
                        "img",
                        "src",
                        s.address(),
                        "width",
                        Integer.toString(s.width()),
                        "height",
                        Integer.toString(s.height()),
                        "alt",
                        caption));
        html.leaf("figcaption", caption);
        html.close();
    }
}
