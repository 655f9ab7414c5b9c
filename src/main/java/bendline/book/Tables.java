package bendline.book;

import java.util.List;

/** The tables of the book, those that others name first. */
final class Tables {

    static final List<String> IN_ORDER = List.of(
            "person",
            "kit",
            "technique",
            "session",
            "clip",
            "throw",
            "analysis",
            "drill",
            "target",
            "correction",
            "note");

    static final String FORMAT = "bendline-book/1";

    private Tables() {}
}
