package bendline.body;

import bendline.body.JointFinder.Body;
import bendline.body.PersonFinder.Person;
import bendline.footage.Frame;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.jspecify.annotations.Nullable;

/**
 * As many joint finders as are used side by side, and one person finder, each made when it is first needed. Owns native memory:
 * close it.
 */
final class Finders implements AutoCloseable {

    private final Queue<JointFinder> idle = new ArrayDeque<>();
    private final List<JointFinder> all = new ArrayList<>();
    private @Nullable PersonFinder people;

    /** The joints of whoever is in one square of some frames, the frames side by side. */
    List<Body> joints(List<Frame> frames, Region region) {
        return frames.parallelStream().map(f -> joints(f, region)).toList();
    }

    private Body joints(Frame frame, Region region) {
        JointFinder finder = take();
        try {
            return finder.find(frame, region);
        } finally {
            give(finder);
        }
    }

    private synchronized JointFinder take() {
        JointFinder free = idle.poll();
        if (free == null) {
            free = new JointFinder();
            all.add(free);
        }
        return free;
    }

    private synchronized void give(JointFinder finder) {
        idle.add(finder);
    }

    /** The people in an upright square of a frame. */
    List<Person> people(Frame frame, Region square) {
        if (people == null) {
            people = new PersonFinder();
        }
        return people.find(frame, square);
    }

    @Override
    public void close() {
        all.forEach(JointFinder::close);
        if (people != null) {
            people.close();
        }
    }
}
