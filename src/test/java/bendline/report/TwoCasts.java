package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.stroke.Stroke;
import java.nio.file.Path;
import java.util.List;

/** The analytic cast told of as two, for pages of more than one. */
final class TwoCasts {

    private TwoCasts() {}

    static ClipAnalysis analysis(Path clip) {
        ClipAnalysis one = AnalyticCast.analysis(clip);
        CastAnalysis first = one.casts().get(0);
        Stroke s = first.stroke();
        Stroke second = new Stroke(
                2,
                s.castsTo(),
                s.firstFrame(),
                s.lastFrame(),
                s.kinematics(),
                s.events(),
                s.measures(),
                s.bend(),
                null);
        return new ClipAnalysis(
                clip,
                one.info(),
                one.setup(),
                one.trace(),
                one.quality(),
                List.of(first, new CastAnalysis(second, first.review())));
    }
}
