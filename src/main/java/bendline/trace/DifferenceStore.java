package bendline.trace;

import bendline.image.Area;
import bendline.image.PackedPlane;
import bendline.image.Plane;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * The difference pictures of a clip, kept in a temporary file so that a second look costs no second decoding and memory
 * does not grow with the clip. Closing deletes the file.
 */
final class DifferenceStore implements AutoCloseable {

    private final Path file;
    private final FileChannel channel;
    private volatile int width;
    private volatile int height;

    DifferenceStore() {
        try {
            file = Files.createTempFile("bendline-", ".differences");
            channel = FileChannel.open(
                    file, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write to the folder for temporary files", e);
        }
    }

    /** Keeps a frame's plane, in place of an earlier one; all must have one size. May be called by several threads. */
    void put(int index, PackedPlane plane) {
        width = plane.width();
        height = plane.height();
        ByteBuffer bytes = ByteBuffer.wrap(plane.quarters());
        try {
            long at = (long) index * width * height;
            while (bytes.hasRemaining()) {
                at += channel.write(bytes, at);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the folder for temporary files is full", e);
        }
    }

    /** The plane of a frame. */
    Plane get(int index) {
        return packed(index).unpacked();
    }

    /** A part of the plane of a frame, whose corner becomes the origin. */
    Plane get(int index, Area area) {
        return packed(index).unpacked(area);
    }

    private PackedPlane packed(int index) {
        ByteBuffer bytes = ByteBuffer.allocate(width * height);
        try {
            long at = (long) index * width * height;
            while (bytes.hasRemaining()) {
                int n = channel.read(bytes, at + bytes.position());
                if (n < 0) {
                    throw new IOException("the temporary file ends early");
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the temporary file back", e);
        }
        return new PackedPlane(width, height, bytes.array());
    }

    @Override
    public void close() {
        try {
            channel.close();
            Files.deleteIfExists(file);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot remove the temporary file " + file, e);
        }
    }
}
