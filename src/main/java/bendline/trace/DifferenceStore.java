package bendline.trace;

import bendline.image.Area;
import bendline.image.PackedPlane;
import bendline.image.Plane;
import bendline.image.PlanePool;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * The difference pictures of a clip, kept in a temporary file so that a second look costs no second decoding and memory
 * does not grow with the clip. Closing deletes the file.
 */
final class DifferenceStore implements AutoCloseable {

    private final Path file;
    private final FileChannel channel;
    /** Arrays that nobody reads any more and that may be filled again. */
    private final Queue<byte[]> spares = new ConcurrentLinkedQueue<>();

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
    void put(int index, Plane plane) {
        width = plane.width();
        height = plane.height();
        byte[] quarters = spare();
        ByteBuffer bytes = ByteBuffer.wrap(PackedPlane.of(plane, quarters).quarters());
        try {
            long at = (long) index * width * height;
            while (bytes.hasRemaining()) {
                at += channel.write(bytes, at);
            }
            spares.add(quarters);
        } catch (IOException e) {
            throw new UncheckedIOException("the folder for temporary files is full", e);
        }
    }

    /** Columns of a plane. */
    int width() {
        return width;
    }

    /** Rows of a plane. */
    int height() {
        return height;
    }

    /** The plane of a frame. */
    Plane get(int index) {
        return get(index, new PlanePool());
    }

    /** The same in a plane from a pool, to which the caller gives it back. */
    Plane get(int index, PlanePool pool) {
        PackedPlane packed = rows(index, 0, height, spare());
        Plane plane = packed.unpacked(pool);
        spares.add(packed.quarters());
        return plane;
    }

    /** A part of the plane of a frame, whose corner becomes the origin. */
    Plane get(int index, Area area) {
        PackedPlane rows = rows(index, area.top(), area.height(), new byte[width * area.height()]);
        return rows.unpacked(new Area(area.left(), 0, area.width(), area.height()));
    }

    private byte[] spare() {
        byte[] spare = spares.poll();
        return spare == null ? new byte[width * height] : spare;
    }

    private PackedPlane rows(int index, int top, int count, byte[] into) {
        ByteBuffer bytes = ByteBuffer.wrap(into);
        try {
            long at = ((long) index * height + top) * width;
            while (bytes.hasRemaining()) {
                int n = channel.read(bytes, at + bytes.position());
                if (n < 0) {
                    throw new IOException("the temporary file ends early");
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the temporary file back", e);
        }
        return new PackedPlane(width, count, into);
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
