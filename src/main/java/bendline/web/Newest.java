package bendline.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/** So many as were put in or asked for last; what goes is told. Not safe for several threads by itself. */
final class Newest<K, V> extends LinkedHashMap<K, V> {

    private static final long serialVersionUID = 1;

    private final int most;
    private final transient Consumer<K> gone;

    Newest(int most) {
        this(most, k -> {});
    }

    Newest(int most, Consumer<K> gone) {
        super(16, 0.75f, true);
        this.most = most;
        this.gone = gone;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
        boolean much = size() > most;
        if (much) {
            gone.accept(eldest.getKey());
        }
        return much;
    }
}
