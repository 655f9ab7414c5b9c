package bendline.cli;

import bendline.analysis.Progress;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;

/** A progress bar a stage, on the error stream. */
final class Bars implements Progress, AutoCloseable {

    private static final int STEPS = 100;

    private final boolean shown;
    private @Nullable String stage;
    private @Nullable ProgressBar bar;

    private Bars(boolean shown) {
        this.shown = shown;
    }

    static Bars silent() {
        return new Bars(false);
    }

    static Bars onConsole() {
        return new Bars(true);
    }

    @Override
    public synchronized void at(String newStage, double fraction) {
        if (!shown) {
            return;
        }
        if (bar == null || !newStage.equals(stage)) {
            close();
            stage = newStage;
            bar = new ProgressBarBuilder()
                    .setTaskName(newStage)
                    .setInitialMax(STEPS)
                    .setStyle(ProgressBarStyle.ASCII)
                    .build();
        }
        bar.stepTo(Math.round(STEPS * Math.max(0, Math.min(1, fraction))));
    }

    @Override
    public synchronized void close() {
        if (bar != null) {
            bar.close();
            bar = null;
        }
    }
}
