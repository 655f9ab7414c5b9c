package bendline.cli;

import bendline.book.Clip;
import bendline.book.Distance;
import bendline.book.Kit;
import bendline.book.PracticeBook;
import bendline.book.Session;
import bendline.book.Technique;
import bendline.book.Throw;
import bendline.footage.Footage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Casts into the book: one in one line, or a folder of clips. */
@Command(
        name = "add",
        description = "Add a cast, or every clip of a folder as one cast each.",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = {
            "",
            "Clips are copied into the book; the files given are left alone. Without CLIP a cast is written down that was not"
                    + " filmed. A clip that holds several casts becomes several when it is analysed."
        })
final class BookAddCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "CLIP|FOLDER", description = "What to add.")
    private List<Path> what = new ArrayList<>();

    @Option(names = "--session", paramLabel = "NAME", description = "Name of the session; its day unless told.")
    private @Nullable String session;

    @Option(names = "--analyse", description = "Analyse the clips at once; else book analyse does so later.")
    private boolean analyse;

    @Mixin
    private CastOptions cast;

    @Mixin
    private SessionOptions sessions;

    @Mixin
    private FaceOptions faces;

    @Mixin
    private BookOptions books;

    @Mixin
    private TalkOptions talk;

    @Override
    public Integer call() throws IOException {
        talk.apply();
        List<Path> clips = clips();
        // Whatever can't be read is told before anything is written down.
        clips.forEach(Footage::open);
        if (clips.size() > 1 && cast.distance(null) != null) {
            throw new ParameterException(
                    spec.commandLine(), "A distance belongs to one cast; add the clips first, then use book measure.");
        }
        PracticeBook book = books.openOrBegin();
        Kit kit = BookNotes.kit(book, cast.kit);
        Distance distance = cast.distance(kit);
        Session at = sessions.write(book, session);
        Technique technique = cast.technique == null
                ? null
                : book.technique(new Technique(UUID.randomUUID().toString(), cast.technique, ""));
        List<Clip> added = new ArrayList<>();
        for (int i = 0; i < Math.max(1, clips.size()); i++) {
            Clip clip = clips.isEmpty() ? null : book.keep(clips.get(i));
            if (clip != null
                    && book.entries(bendline.book.Selection.ALL).stream().anyMatch(e -> clip.equals(e.clip()))) {
                say("In the book already: " + clip.name());
                continue;
            }
            Throw row = book.add(row(at, clip, kit, technique, distance));
            say("Added " + at.name() + "/" + row.number() + (clip == null ? "" : " from " + clip.name())
                    + (distance == null ? "" : ": " + BookNotes.distance(distance.metres(), distance.plusMinus())));
            if (clip != null) {
                added.add(clip);
            }
        }
        if (analyse) {
            new BookAnalysis(book, talk, faces, spec.commandLine().getOut()).analyse(added);
        }
        return ExitStatus.DONE;
    }

    private void say(String line) {
        if (!talk.quiet()) {
            spec.commandLine().getOut().println(line);
        }
    }

    private Throw row(
            Session at, @Nullable Clip clip, @Nullable Kit kit, @Nullable Technique technique, @Nullable Distance d) {
        return new Throw(
                "",
                at.id(),
                0,
                clip == null ? null : clip.id(),
                1,
                kit == null ? null : kit.id(),
                technique == null ? null : technique.id(),
                d == null ? null : (Double) d.metres(),
                d == null ? null : d.how(),
                d == null ? null : (Double) d.plusMinus(),
                cast.hitClip(),
                cast.baitOn(),
                cast.note,
                "");
    }

    /** The clips named and those in folders named, by name; folders are not looked through below their first level. */
    private List<Path> clips() throws IOException {
        List<Path> out = new ArrayList<>();
        for (Path p : what) {
            if (!Files.isDirectory(p)) {
                out.add(p);
                continue;
            }
            List<Path> inside = ClipFolder.clips(p);
            if (inside.isEmpty()) {
                throw new ParameterException(
                        spec.commandLine(),
                        "The folder " + p + " holds no clip (mp4, mov, m4v, avi, mkv, webm); name another.");
            }
            out.addAll(inside);
        }
        return out;
    }
}
