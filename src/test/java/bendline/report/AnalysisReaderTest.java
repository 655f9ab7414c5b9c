package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bendline.analysis.ClipAnalysis;
import bendline.geometry.Point;
import bendline.scene.BlankFacts;
import bendline.scene.Conditions;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.Stroke;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnalysisReaderTest {

    @TempDir
    private Path temp;

    /** The files that casts are read from, without the pictures. */
    static Path write(ClipAnalysis analysis, Path folder) throws IOException {
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("analysis.json"), new AnalysisJson().write(analysis));
        try (BufferedWriter frames = Files.newBufferedWriter(folder.resolve("frames.csv"));
                BufferedWriter curves = Files.newBufferedWriter(folder.resolve("curves.csv"))) {
            new FramesCsv().write(analysis, frames);
            new CurvesCsv().write(analysis, curves);
        }
        return folder;
    }

    private static ClipAnalysis analytic() {
        return AnalyticCast.analysis(Path.of("cast.mp4"));
    }

    @Test
    void whatWasWrittenIsReadBack() throws IOException {
        ClipAnalysis written = analytic();
        Stroke stroke = written.casts().get(0).stroke();
        List<ReadCast> read = new AnalysisReader().read(write(written, temp.resolve("a")));
        assertThat(read).hasSize(1);
        ReadCast cast = read.get(0);
        assertThat(cast.setup()).isEqualTo(written.setup());
        assertThat(cast.castsTo()).isEqualTo(stroke.castsTo());
        assertThat(cast.events()).isEqualTo(stroke.events());
        assertThat(cast.measures()).isEqualTo(stroke.measures());
        assertThat(cast.picture()).isEqualTo(new ReadCast.PictureFacts(640, 360, 1, 60));
        assertThat(cast.clip()).isEqualTo("cast.mp4");
        Kinematics k = stroke.kinematics();
        assertThat(cast.track().size()).isEqualTo(k.size());
        for (int i = 0; i < k.size(); i++) {
            // As many decimals as the file has.
            assertThat(cast.track().buttAngleDeg()[i]).isCloseTo(Math.toDegrees(k.buttAngleRad()[i]), within(0.0051));
            assertThat(cast.track().seconds()[i]).isCloseTo(k.clipSeconds()[i], within(1e-6));
        }
        assertThat(cast.track().freeLengthPx()).isCloseTo(AnalyticCast.FREE_PX, within(0.5));
        assertThat(cast.track().chordRatio()[AnalyticCast.GAP_FROM - stroke.firstFrame()])
                .isNaN();
    }

    @Test
    void marksConditionsAndBlankComeBackAsTheyWereTold() throws IOException {
        Setup told = new Setup(
                3.9,
                3.2,
                0.9,
                null,
                Side.LEFT,
                4.0,
                List.of(
                        new Mark(
                                1.25,
                                Map.of(Part.GRIP, new Point(300.5, 235), Part.RIG, new Point(12.25, 80)),
                                Set.of(Part.TIP)),
                        new Mark(2.5, Map.of(), Set.of(Part.RIG, Part.GRIP)),
                        new Mark(3, Map.of(), Set.of(), Set.of("release", "peakBend"))),
                new Conditions(
                        new Conditions.Rig(Conditions.RigType.FEEDER_STEM, 0.06, 0.014, 0.022, 0.035),
                        new Conditions.Tackle(0.12, Conditions.LineKind.BRAID, 1.2e-4, 90.0, 160.0, 2.6, 0.4),
                        new Conditions.Wind(4.0, 20.0, 10.0),
                        new Conditions.Outcome(1.9, 100.0, 104.0, 1.5)),
                new BlankFacts(1.25, 0.12, "medium-long", new BlankFacts.Measured(210, 0.07, 0.02)));
        Setup bare = new Setup(
                null, null, null, null, null, null, List.of(), Conditions.NONE, new BlankFacts(null, 0.1, null, null));
        for (Setup setup : List.of(told, bare, Setup.NONE)) {
            ClipAnalysis a = analytic();
            ClipAnalysis given = new ClipAnalysis(a.clip(), a.info(), setup, a.trace(), a.quality(), a.casts());
            Path folder = temp.resolve("setup" + setup.hashCode());
            assertThat(new AnalysisReader().read(write(given, folder)).get(0).setup())
                    .isEqualTo(setup);
        }
    }

    @Test
    void curvesAreTheBlanksOfTheFormulasInLengthsFromTheHandAtTheStart() throws IOException {
        ReadCast cast =
                new AnalysisReader().read(write(analytic(), temp.resolve("a"))).get(0);
        int frame = 145;
        Point start = AnalyticCast.grip(
                AnalyticCast.seconds(cast.events().get(EventKind.FORWARD_START).frame()));
        Point tip = AnalyticCast.blank(AnalyticCast.seconds(frame)).last();
        Point read = cast.track().curves().get(frame).last();
        assertThat(read.x()).isCloseTo((tip.x() - start.x()) / AnalyticCast.FREE_PX, within(1e-4));
        assertThat(read.y()).isCloseTo((start.y() - tip.y()) / AnalyticCast.FREE_PX, within(1e-4));
        assertThat(cast.track().curves()).doesNotContainKey(AnalyticCast.GAP_FROM);
    }

    @Test
    void analysesFromBeforeThereWereCurvesAreReadWithoutThem() throws IOException {
        Path folder = write(analytic(), temp.resolve("old"));
        Files.delete(folder.resolve("curves.csv"));
        ReadCast cast = new AnalysisReader().read(folder).get(0);
        assertThat(cast.track().curves()).isEmpty();
        assertThat(cast.measures()).hasSize(5);
    }

    @Test
    void aClipWithoutACastHoldsNone() throws IOException {
        Path folder = write(AnalyticCast.withoutCast(Path.of("none.mp4")), temp.resolve("none"));
        assertThat(new AnalysisReader().read(folder)).isEmpty();
    }

    @Test
    void refusesOtherFormatsAndTornFilesPlainly() throws IOException {
        Path newer = write(analytic(), temp.resolve("newer"));
        Path json = newer.resolve("analysis.json");
        String text = Files.readString(json);
        Files.writeString(json, text.replace("bendline-analysis/1", "bendline-analysis/9"));
        assertThatThrownBy(() -> new AnalysisReader().read(newer))
                .isInstanceOf(AnalysisFileException.class)
                .hasMessageContaining("bendline-analysis/9")
                .hasMessageContaining("analyse the clip again");
        Files.writeString(json, text.substring(0, text.length() / 2));
        assertThatThrownBy(() -> new AnalysisReader().read(newer))
                .isInstanceOf(AnalysisFileException.class)
                .hasMessageContaining("newer");
        Files.writeString(json, text);
        Files.writeString(newer.resolve("frames.csv"), "nonsense\n1\n");
        assertThatThrownBy(() -> new AnalysisReader().read(newer)).isInstanceOf(AnalysisFileException.class);
    }
}
