package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.technique.Finding;
import bendline.technique.Finding.State;
import bendline.technique.Review;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class CastStoryTest {

    private final ClipAnalysis clip = AnalyticCast.analysis(Path.of("clip.mp4"));
    private final CastAnalysis found = clip.casts().get(0);

    private CastStory storyOf(State... kept) {
        List<Finding> findings = found.review().findings().stream()
                .filter(f -> List.of(kept).contains(f.state()))
                .toList();
        Review review = new Review(findings, List.of(), null, "");
        return new CastStory(clip, new CastAnalysis(found.stroke(), review));
    }

    @Test
    void aFoundFaultLeadsWithItsDrillAndHowFarItsNumbersStandClear() {
        CastStory story = new CastStory(clip, found);
        assertThat(story.headline()).isEqualTo("The tip was dropped too early");
        assertThat(story.next()).startsWith("Cast at half power");
        // 25.0 ± 0.9 against 12: 14 times its uncertainty, told as "more than 10".
        assertThat(story.howSure())
                .contains("1 of 2 numbers speaks for it, beyond its limit by more than 10 times its uncertainty.")
                .contains("1 of 3 faults looked for could not be told.");
    }

    @Test
    void nothingFoundIsOnlySaidPlainlyWhereEverythingCouldBeTold() {
        assertThat(storyOf(State.CLEAR).headline()).isEqualTo("No fault found");
        assertThat(storyOf(State.CLEAR, State.CANNOT_TELL).headline())
                .isEqualTo("No fault found, as far as could be told");
    }

    @Test
    void whereSomethingCouldNotBeToldTheNextThingIsABetterClip() {
        assertThat(storyOf(State.CLEAR, State.CANNOT_TELL).next()).startsWith("Set the phone to 120");
        assertThat(storyOf(State.CLEAR).next()).startsWith("Change nothing");
    }

    @Test
    void timesAreThoseOfTheMoments() {
        // Backswing 0.57 to 1.73 s, push 2.31 to release 2.60 s, in a clip that runs in real time.
        assertThat(String.join(" ", new CastStory(clip, found).happened()))
                .contains("goes to the right: backswing 1.16 s, push to release 0.29 s, most bend at 2.52 s");
    }

    @Test
    void theTipIsCountedAsSeenOnlyWhereItWas() {
        // Frames 24 to 220, three of them not seen: 194 of 197.
        assertThat(new CastStory(clip, found).howSure())
                .contains("The tip was seen in 98 % of the frames of the cast.");
    }
}
