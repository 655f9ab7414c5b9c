package bendline.simulate;

import java.awt.Color;

/** What a part of the angler is covered with: a colour for small parts and a woven stuff for large ones. */
record Stuff(Color colour, Cloth cloth) {

    Stuff(Color colour, double creases, long seed) {
        this(colour, new Cloth(colour, creases, seed));
    }
}
