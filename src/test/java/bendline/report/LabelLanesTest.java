package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;

class LabelLanesTest {

    private static final double LENGTH = 600;

    @Property(tries = 300)
    void labelsNeverTouchAndNeverLeaveTheLine(
            @ForAll @Size(max = 12) List<@DoubleRange(min = 0, max = LENGTH) Double> spots,
            @ForAll @DoubleRange(min = 8, max = 180) double width) {
        double[] x = spots.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double[] widths = new double[x.length];
        Arrays.fill(widths, width);
        List<LabelLanes.Place> places = LabelLanes.arrange(x, widths, LENGTH);
        for (int i = 0; i < x.length; i++) {
            assertThat(places.get(i).left()).isBetween(0.0, LENGTH - width);
            for (int j = 0; j < i; j++) {
                boolean sameLane = places.get(i).lane() == places.get(j).lane();
                double apart = Math.abs(places.get(i).left() - places.get(j).left());
                assertThat(!sameLane || apart > width).isTrue();
            }
        }
    }
}
