package bendline.cli;

import bendline.book.Distance;
import bendline.book.Entry;
import bendline.book.Kit;
import bendline.book.PracticeBook;
import bendline.book.Technique;
import bendline.book.Throw;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What is known later of a cast. */
@Command(
        name = "measure",
        description = "Write down a cast's distance, or what else is known of it now.",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class BookMeasureCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "CAST", description = "Session and number, for example 2026-05-03/4.")
    private String name;

    @Mixin
    private CastOptions cast;

    @Mixin
    private BookOptions books;

    @Override
    public Integer call() {
        PracticeBook book = books.open();
        Entry entry = book.entry(name);
        Kit kit = cast.kit == null ? entry.kit() : BookNotes.kit(book, cast.kit);
        Distance distance = cast.distance(kit);
        Throw old = entry.cast();
        String technique = cast.technique == null
                ? old.techniqueId()
                : book.technique(new Technique(UUID.randomUUID().toString(), cast.technique, ""))
                        .id();
        book.change(new Throw(
                old.id(),
                old.sessionId(),
                old.number(),
                old.clipId(),
                old.clipCast(),
                kit == null ? null : kit.id(),
                technique,
                distance == null ? old.distanceM() : (Double) distance.metres(),
                distance == null ? old.distanceHow() : distance.how(),
                distance == null ? old.distanceSdM() : (Double) distance.plusMinus(),
                or(cast.hitClip(), old.hitClip()),
                or(cast.baitOn(), old.baitOn()),
                cast.note.isEmpty() ? old.notes() : cast.note,
                old.addedAt()));
        spec.commandLine().getOut().println(BookNotes.line(book.entry(name), book));
        return ExitStatus.DONE;
    }

    private static @Nullable Boolean or(@Nullable Boolean given, @Nullable Boolean before) {
        return given == null ? before : given;
    }
}
