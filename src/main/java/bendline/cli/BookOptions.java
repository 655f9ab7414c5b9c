package bendline.cli;

import bendline.book.PracticeBook;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which practice book. */
final class BookOptions {

    @Option(
            names = "--book",
            paramLabel = "DIR",
            description =
                    "Folder of the practice book; else the one that BENDLINE_BOOK names, else bendline-book in your home.")
    private @Nullable Path book;

    Path folder() {
        if (book != null) {
            return book;
        }
        String named = System.getenv("BENDLINE_BOOK");
        return named == null || named.isBlank()
                ? Path.of(System.getProperty("user.home"), "bendline-book")
                : Path.of(named);
    }

    PracticeBook open() {
        return PracticeBook.open(folder());
    }

    PracticeBook openOrBegin() {
        return PracticeBook.openOrBegin(folder());
    }
}
