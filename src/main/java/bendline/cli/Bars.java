package bendline.cli;

import bendline.analysis.FirstLook;
import bendline.analysis.Progress;
import java.io.PrintWriter;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;

/** A progress bar a stage, on the error stream, and in between a word on what the clip is good for. */
final class Bars implements Progress, AutoCloseable {

    private static final int STEPS = 100;

    private final boolean shown;
    private @Nullable String stage;
    private @Nullable ProgressBar bar;

    private final @Nullable PrintWriter words;

    private Bars(boolean shown, @Nullable PrintWriter words) {
        this.shown = shown;
        this.words = words;
    }

    /** Neither bars nor words. */
    static Bars silent() {
        return new Bars(false, null);
    }

    /**
     * Words, and bars too where somebody watches.
     *
     * @param words where to print
     */
    static Bars saying(PrintWriter words, boolean watched) {
        return new Bars(watched, words);
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
    public synchronized void firstLook(FirstLook look) {
        if (words == null) {
            return;
        }
        close();
        words.println("What this clip is good for:");
        look.says().forEach(s -> words.println("  " + s));
        if (!look.advice().isEmpty()) {
            words.println("Next time:");
            look.advice().forEach(s -> words.println("  " + s));
        }
        words.println();
        words.flush();
    }

    @Override
    public synchronized void close() {
        if (bar != null) {
            bar.close();
            bar = null;
        }
    }
}
