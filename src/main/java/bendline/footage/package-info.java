/**
 * A file on disk becomes upright frames with their true times, and frames become a file again. Orientation, pixel aspect,
 * time stamps, brightness and slow motion are settled here, once, so that nothing downstream has to know about containers.
 *
 * <p><b>Reading.</b> {@link bendline.footage.Footage} opens, surveys and hands out readers; each reader decodes in order
 * from the first frame, because jumping lands beside the frame asked for. A file passes a look at its first bytes, then an
 * allow-list of containers, of the file protocol and of codecs, with a limit on pixels, before a decoder runs. The main
 * picture track is the one that moves, then the one with most pixels; cover pictures are no tracks. What a header claims
 * about frames, length, rate and size is compared with what was decoded and never believed.
 *
 * <p><b>Pixels.</b> Shown are the stored pixels inside the clean aperture, made square by stretching the longer side
 * (to half a per cent they count as square), then mirrored and turned by the display matrix (the container's, else the picture's own). Pictures beyond 4K are reduced by a
 * whole number. Grey frames are the decoder's luma plane as stored: limited range stays limited, of ten bits the upper
 * eight are kept, HLG and PQ keep their curve, so only differences of grey mean anything. Colour pictures are for people:
 * full range, high dynamic range brought to an ordinary screen. Of interlaced frames the first field is used.
 *
 * <p><b>Time.</b> A frame's time is its own presentation time minus the first one's, repaired by the rule stated at the
 * package's timeline. Whatever was repaired, lost, damaged or claimed wrongly is a note in
 * {@link bendline.footage.ClipInfo}; the end of what can be read is never passed off as the end of the clip.
 *
 * <p><b>Writing.</b> {@link bendline.footage.ClipWriter} makes silent H.264 MP4 files that play everywhere, with the times
 * given and no frame dropped, byte for byte the same for the same frames.
 *
 * <p>Every native object is freed by the class that made it. Decoding runs in this process: the allow-lists keep to FFmpeg's
 * widely used decoders, and a test feeds the reader mutated clips, which would take the process down if one got through.
 */
@NullMarked
package bendline.footage;

import org.jspecify.annotations.NullMarked;
