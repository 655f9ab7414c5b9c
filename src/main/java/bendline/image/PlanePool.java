package bendline.image;

import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * Planes that are written over again and again: a new one of a picture's size is cleared first and soon garbage, of which a clip
 * makes gigabytes. Belongs to the one piece of work that takes planes from it and gives them back; may be used by several threads.
 */
public final class PlanePool {

    private final Map<Integer, Queue<float[]>> spares = new ConcurrentHashMap<>();

    /** A plane with anything in it. */
    public Plane take(int width, int height) {
        float[] spare = queue(width * height).poll();
        return new Plane(width, height, spare == null ? new float[width * height] : spare);
    }

    /** Takes a plane that nobody reads any more. */
    public void giveBack(Plane plane) {
        queue(plane.values().length).add(plane.values());
    }

    private Queue<float[]> queue(int length) {
        return spares.computeIfAbsent(length, n -> new ConcurrentLinkedQueue<>());
    }
}
