package bendline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Working without a clip, as somebody types it. */
class ReachCommandTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String line) {
        return Main.run(new PrintWriter(out), new PrintWriter(err), line.split(" "));
    }

    @Test
    void aThrowIsWorkedOutInLines() {
        int status = run("reach --speed 50 --angle 42 --empty-mass 60 --bait 14 --rig-type loaded --line 0.22 --wind 4"
                + " --leader-strength 20lb --casting-weight 70");
        assertThat(err.toString()).isEmpty();
        assertThat(status).isZero();
        assertThat(out.toString())
                .containsPattern("expected +\\d+ m \\(\\d+ to \\d+\\)")
                .containsPattern("in still air +\\d+ m")
                .contains("best angle", "The next ten metres", "stem or tail", "technique, ")
                .contains("loaded weight", "60 g empty and 14 g of bait", "not fitted yet, assumed")
                .contains("PAST THE USUAL LIMIT: For 74 g the leader", "PAST THE USUAL LIMIT: The rig is 74 g")
                .contains("power lines")
                // The rod is past its weight already: more weight is not offered.
                .doesNotContain("10 g more weight");
    }

    @Test
    void aDistanceAloneGivesStillAir() {
        assertThat(run("reach --measured 104 --rig-mass 74 --rig-type loaded --wind 4"))
                .isZero();
        assertThat(out.toString())
                .contains("expected       cannot tell")
                .containsPattern("in still air +1\\d\\d m")
                .contains("must have left at about");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "reach --speed 50 --empty-mass 90kg | 90000 g is outside 5 to 500 g. Did you mean 90 g?",
                "reach --speed 50 --empty-mass 0.09 | Did you mean 0.09 kg, which is 90 g?",
                "reach --speed 50 --empty-mass 3 | Did you mean 3 oz, which is 85 g?",
                "reach --speed 50 --rig-mass 85oz | Did you mean 85 g?",
                "reach --speed 50 --rig-mass 0.09 | Did you mean 0.09 kg, which is 90 g?",
                "reach --speed 50 --empty-mass=-60 | outside 5 to 500 g",
                "reach --speed 50 --rig-mass 74 --wind 60 | Did you mean 60 km/h, which is 16.7 m/s?",
                "reach --speed 50 --rig-mass 74 --wind 400 | outside 0 to 25 m/s",
                "reach --speed 50 --rig-mass 74 --line 22 | Did you mean 22 hundredths of a millimetre, which is 0.22 mm?",
                "reach --speed 180 --rig-mass 74 | Did you mean 180 km/h, which is 50 m/s?",
                "reach --speed 50 --rig-mass 74 --line-strength 60 | Did you mean 60 lb, which is 27.2 kg?",
                "reach --speed 50 --rig-mass heavy | is no weight",
                "reach --speed 50 --rig-mass 74 --feeder-size 22 | write for example 22x35",
                "reach --speed 50 --rig-mass 74 --rig-type round | open, loaded, stem or bomb",
                "reach --speed 50 --rig-mass 120 --empty-mass 60 | does not fit",
                "reach --speed 50 --bait 14 | --empty-mass",
                "reach --speed 50 | weight",
                "reach --rig-mass 74 | --speed or --measured",
                "reach --speed 50 --rig-mass 74 --wind-from 90 | without its speed",
                "reach --speed 50 --rig-mass 74 --line-loss 2 | 2.4,0.3",
                "reach fit --rig-mass 74 --cast 50,40 | --cast 48,38,96",
                "reach fit --rig-mass 74 --cast 30,38,108 | without any loss",
                "reach turns --counted 100 | 100,112",
                "reach turns --counted 100,12 | in a turn",
                "reach turns --counted 100,112 --spool 65x30 --turns 90 | --line 0.22",
                "reach wraps --spacing 3.66 | --metres or --wraps",
                "reach wraps --spacing 40 --wraps 3 | sticks",
                "reach weight --empty-mass 0.06 | which is 60 g"
            })
    void whatCantBeIsRefusedInOneSentenceWithTheSensibleRange(String line, String words) {
        assertThat(run(line)).isEqualTo(2);
        assertThat(err.toString()).contains(words).startsWith("bendline: ");
        assertThat(err.toString().strip().lines()).hasSize(1);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void practiceNumbersAreTold() {
        assertThat(run("reach wraps --spacing 12ft --wraps 25 --metres 100")).isZero();
        assertThat(run("reach turns --counted 100,112 --turns 100")).isZero();
        assertThat(run("reach turns --counted 100,124 --spool 65x30 --line 0.25 --metres 100"))
                .isZero();
        assertThat(run("reach weight --empty-mass 60 --bait 14")).isZero();
        assertThat(run("reach fit --rig-mass 74 --rig-type loaded --line 0.22 --cast 50,40,94,4 --cast 52,38,98,4"))
                .isZero();
        assertThat(out.toString())
                .contains("25 wraps are 91.44 m", "100.0 m are 27 wraps and 1.24 m")
                .contains("100 turns are 89.3 m", "100.0 m are 124.0 turns", "with 100 m of line out")
                .contains("Loaded weight 74 g (2.6 oz)", "26 lb")
                .containsPattern("From now on give --line-loss \\d+\\.\\d+,\\d+\\.\\d+");
    }

    @Test
    void theSameIsPrintedEverywhere() {
        Locale before = Locale.getDefault();
        try {
            run("reach weight --empty-mass 60 --bait 14.5");
            String here = out.toString();
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            out.getBuffer().setLength(0);
            run("reach weight --empty-mass 60 --bait 14.5");
            assertThat(out).hasToString(here);
        } finally {
            Locale.setDefault(before);
        }
    }
}
