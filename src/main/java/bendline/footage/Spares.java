package bendline.footage;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Arrays that were used and may be used again: a new array of a picture's size is cleared before it is written, which takes
 * as long as the writing. Keeps a few of each length. Not thread-safe.
 */
final class Spares {

    /** As many planes as a batch of frames side by side has. */
    private static final int MOST = 64;

    private final Deque<byte[]> arrays = new ArrayDeque<>();

    /** An array of a length, with anything in it. */
    byte[] take(int length) {
        for (var i = arrays.iterator(); i.hasNext(); ) {
            byte[] array = i.next();
            if (array.length == length) {
                i.remove();
                return array;
            }
        }
        return new byte[length];
    }

    /** Takes an array that nobody reads any more. */
    void give(byte[] array) {
        if (arrays.size() < MOST) {
            arrays.push(array);
        }
    }
}
