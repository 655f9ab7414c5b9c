package bendline.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bendline.compare.Cast;
import bendline.compare.Condition;
import bendline.compare.Wind;
import bendline.geometry.Point;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people say of clips, and how it reaches the analysis and the comparison. */
class ReviewsTest {

    @TempDir
    private Path temp;

    private PracticeBook book;
    private Clip clip;

    @BeforeEach
    void keepAClip() throws IOException {
        book = PracticeBook.openOrBegin(temp.resolve("book"));
        clip = book.keep(Files.writeString(temp.resolve("cast.mp4"), "film"));
    }

    private Note note(@Nullable String answers, @Nullable String drill) {
        return new Note("n1", clip.id(), 0.5, "ten slow ones", "", null, answers, drill, "2026-06-01T08:00:00Z");
    }

    @Test
    void aDrillIsSetWithItsNoteOrNotAtAll() {
        Reviews reviews = new Reviews(book);
        Drill drill = new Drill("d1", null, "ten slow ones", "2026-06-01", null);
        assertThatThrownBy(() -> reviews.add(note("a note that is not there", "d1"), drill))
                .isInstanceOf(BookException.class);
        assertThat(book.drills()).isEmpty();
        assertThat(reviews.notes(clip.id())).isEmpty();
        reviews.add(note(null, "d1"), drill);
        assertThat(book.drills()).containsExactly(drill);
        assertThat(reviews.notes(clip.id())).containsExactly(note(null, "d1"));
    }

    @Test
    void onlyAPartHasAPlace() {
        Reviews reviews = new Reviews(book);
        assertThatThrownBy(() -> reviews.add(correction("c1", 1, "release", 5.0)))
                .isInstanceOf(BookException.class);
        assertThatThrownBy(() -> reviews.add(correction("c1", 1, "hat", null))).isInstanceOf(BookException.class);
    }

    private Correction correction(String id, double seconds, String part, @Nullable Double x) {
        return new Correction(
                id, clip.id(), seconds, part, x, x, null, "2026-06-01T08:00:0" + id.charAt(1) + "Z", null);
    }

    @Test
    void correctionsThatCountReachTheAnalysisLaterOnesOverEarlierOnes() {
        Reviews reviews = new Reviews(book);
        reviews.add(correction("c1", 1, "tip", 10.0));
        reviews.add(correction("c2", 2, "release", null));
        reviews.add(correction("c3", 1, "tip", 12.0));
        reviews.add(correction("c4", 1, "rig", null));
        reviews.add(correction("c5", 1.9, "release", null));
        reviews.add(correction("c6", 3, "grip", 99.0));
        reviews.undo(clip.id(), "c6");
        assertThat(ClipSetup.of(book, clip, List.of()).marks())
                .containsExactly(
                        new Mark(1, Map.of(Part.TIP, new Point(12, 12)), Set.of(Part.RIG)),
                        new Mark(2, Map.of(), Set.of(), Set.of("release")),
                        new Mark(1.9, Map.of(), Set.of(), Set.of("release")));
    }

    @Test
    void kitAndWindOfTheBookReachAComparison() {
        Session session = book.session(BookTest.day("2026-05-03"));
        Kit kit = book.kit(new Kit(
                "k1",
                "hollin 390",
                "Heron 390",
                3.9,
                null,
                0.8,
                null,
                "0.10 braid",
                null,
                null,
                null,
                85.0,
                null,
                null,
                ""));
        Throw plain = BookTest.cast(session, clip);
        book.add(new Throw(
                "", plain.sessionId(), 0, clip.id(), 1, kit.id(), null, 62.5, "17 wraps", 1.0, null, null, "", ""));
        Entry entry = book.entries(Selection.ALL).get(0);
        Cast cast = new BookCasts(book).cast(entry, Optional.empty());
        assertThat(cast.wind()).isEqualTo(new Wind(2.5, 180));
        assertThat(cast.conditions())
                .containsEntry(Condition.ROD, "Heron 390")
                .containsEntry(Condition.LINE, "0.10 braid")
                .containsEntry(Condition.WIND, "2.5 m/s from 180°");
        assertThat(cast.distance().value()).isEqualTo(62.5);
        assertThat(cast.setup().rigMassKg()).isEqualTo(0.085);
    }
}
