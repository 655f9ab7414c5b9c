package bendline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class HomographyTest {

    private static final Homography TILTED = new Homography(1.02, 0.03, 12, -0.02, 0.97, -7, 2e-5, -1e-5);
    private static final Point SOMEWHERE = new Point(731.5, 402.25);

    @Test
    void inverseLeadsBack() {
        Point back = TILTED.inverse().apply(TILTED.apply(SOMEWHERE));
        assertThat(back.distance(SOMEWHERE)).isCloseTo(0, within(1e-9));
    }

    @Test
    void chainEqualsOneAfterTheOther() {
        Homography turned = new Homography(0.8, -0.6, 40, 0.6, 0.8, -3, -1e-5, 3e-5);
        Point one = turned.apply(TILTED.apply(SOMEWHERE));
        assertThat(TILTED.then(turned).apply(SOMEWHERE).distance(one)).isCloseTo(0, within(1e-9));
    }

    @Test
    void flatMapHasNoInverse() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Homography(1, 2, 0, 2, 4, 0, 0, 0).inverse());
    }
}
