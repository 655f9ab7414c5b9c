package bendline.footage;

import bendline.image.Luma;

/**
 * The colour of a frame apart from its brightness: the decoder's own two colour-difference planes, of half the picture's
 * width and height, upright like the grey plane; 128 is grey. The planes are lined up with the grey one to half a pixel: where
 * in its four pixels a colour sample lies differs between encoders.
 *
 * @param blue Cb
 * @param red Cr
 */
public record Tint(Luma blue, Luma red) {

    /** Checks that the planes are of one size. */
    public Tint {
        if (blue.width() != red.width() || blue.height() != red.height()) {
            throw new IllegalArgumentException("the two colour planes differ in size");
        }
    }
}
