package bendline.benchmark;

import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.scene.Setup;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Path;

/** Whatever turns a clip into an analysis. */
@FunctionalInterface
interface Analysts {

    ClipAnalysis analyse(Path clip, Setup setup);

    /** The whole chain. */
    static Analysts ours() throws ReflectiveOperationException {
        Class<?> type = Class.forName("bendline.analysis.Analyser");
        Object analyser = type.getDeclaredConstructor().newInstance();
        var method = type.getMethod("analyse", Path.class, Setup.class, Progress.class);
        return (clip, setup) -> {
            try {
                return (ClipAnalysis) method.invoke(analyser, clip, setup, Progress.SILENT);
            } catch (InvocationTargetException e) {
                throw new IllegalStateException(clip + ": " + e.getCause(), e.getCause());
            } catch (IllegalAccessException e) {
                throw new IllegalStateException(e);
            }
        };
    }
}
