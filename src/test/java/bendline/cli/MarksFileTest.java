package bendline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bendline.geometry.Point;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MarksFileTest {

    @TempDir
    private Path dir;

    private Path file(String lines) throws IOException {
        return Files.writeString(dir.resolve("marks.csv"), lines);
    }

    @Test
    void aLineIsAPlaceSomethingHiddenOrAMoment() throws IOException {
        assertThat(MarksFile.read(
                        file("seconds,part,x,y\n3.2,tip,812.5,220\n 3.2 , grip, 640, 700\n4,Rig,,\n3.5,release,,\n")))
                .containsExactly(
                        new Mark(3.2, Map.of(Part.TIP, new Point(812.5, 220)), Set.of()),
                        new Mark(3.2, Map.of(Part.GRIP, new Point(640, 700)), Set.of()),
                        new Mark(4, Map.of(), Set.of(Part.RIG)),
                        new Mark(3.5, Map.of(), Set.of(), Set.of("release")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"3.2,hat,1,2", "soon,tip,1,2", "3.2,tip,1,", "3.2,tip,left,2", "3.2,tip", "3.2,release,1,2"})
    void aLineThatCantBeReadIsNamed(String line) throws IOException {
        Path file = file("seconds,part,x,y\n1,tip,1,2\n" + line + "\n");
        assertThatThrownBy(() -> MarksFile.read(file))
                .hasMessageContaining("Line 3")
                .hasMessageContaining("seconds,part,x,y");
    }

    @Test
    void aMissingFileIsTold() {
        assertThatThrownBy(() -> MarksFile.read(dir.resolve("none.csv"))).hasMessageContaining("no such file");
    }

    @Test
    void marksOnOneFrameCountTogetherAndTheLaterOneWins() {
        Mark tip = new Mark(1, null, new Point(5, 6));
        Mark gone = new Mark(1, Map.of(Part.GRIP, new Point(1, 2)), Set.of(Part.TIP));
        assertThat(tip.and(gone)).isEqualTo(gone);
        assertThat(gone.and(tip)).isEqualTo(new Mark(1, new Point(1, 2), new Point(5, 6)));
        assertThatThrownBy(() -> new Mark(1, Map.of(Part.TIP, new Point(1, 2)), Set.of(Part.TIP)))
                .hasMessageContaining("both marked and hidden");
    }
}
