package bendline.benchmark;

import bendline.simulate.ScenarioDeck;
import bendline.simulate.Simulator;
import java.io.IOException;
import java.nio.file.Path;

/** Renders clips to develop with, one of a deck: {@code RenderDeck DIR SEED NUMBER}; never with the benchmark's seed. */
public final class RenderDeck {

    private RenderDeck() {}

    /** Runs it. */
    public static void main(String[] args) throws IOException {
        int number = Integer.parseInt(args[2]);
        Simulator.renderInto(ScenarioDeck.deal(Long.parseLong(args[1]), number).get(number - 1), Path.of(args[0]));
    }
}
