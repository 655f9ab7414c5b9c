package bendline.footage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/** Cuts into the boxes of an MP4 to make the oddities that phones and accidents make (ISO/IEC 14496-12 names the boxes). */
final class Mp4Surgery {

    private static final String[] TRACK = {"moov", "trak", "mdia", "minf", "stbl"};
    private static final int ENTRY_HEADER = 86;

    private byte[] bytes;

    Mp4Surgery(Path file) throws IOException {
        bytes = Files.readAllBytes(file);
    }

    Path save(Path file) throws IOException {
        return Files.write(file, bytes);
    }

    ByteBuffer view() {
        return ByteBuffer.wrap(bytes);
    }

    /** Where a box starts, following names from the top. */
    int find(String... names) {
        int from = 0;
        int end = bytes.length;
        int found = -1;
        for (String name : names) {
            found = child(from, end, name);
            end = found + view().getInt(found);
            from = found + 8 + extra(name);
        }
        return found;
    }

    /** Where a box of the sample tables starts. */
    int table(String name) {
        String[] path = Arrays.copyOf(TRACK, TRACK.length + 1);
        path[TRACK.length] = name;
        return find(path);
    }

    /** Header bytes between a box and its children. */
    private static int extra(String name) {
        return name.equals("stsd") ? 8 : name.equals("avc1") ? ENTRY_HEADER - 8 : 0;
    }

    private int child(int from, int end, String name) {
        for (int at = from; at + 8 <= end; at += view().getInt(at)) {
            if (name.equals(new String(bytes, at + 4, 4, StandardCharsets.ISO_8859_1))) {
                return at;
            }
        }
        throw new IllegalArgumentException("no box " + name);
    }

    /** Adds a box at the end of the picture's sample entry, which lies before the pictures in our files. */
    void describePicture(String name, int... values) {
        ByteBuffer box = ByteBuffer.allocate(8 + 4 * values.length);
        box.putInt(box.capacity()).put(name.getBytes(StandardCharsets.ISO_8859_1));
        Arrays.stream(values).forEach(box::putInt);
        Deque<Integer> parents = new ArrayDeque<>();
        String[] path = {"moov", "trak", "mdia", "minf", "stbl", "stsd", "avc1"};
        for (int depth = 1; depth <= path.length; depth++) {
            parents.push(find(Arrays.copyOf(path, depth)));
        }
        int at = parents.peek() + view().getInt(parents.peek());
        int offsets = table("stco");
        for (int i = 0; i < view().getInt(offsets + 12); i++) {
            int slot = offsets + 16 + 4 * i;
            view().putInt(slot, view().getInt(slot) + box.capacity());
        }
        parents.forEach(p -> view().putInt(p, view().getInt(p) + box.capacity()));
        byte[] longer = new byte[bytes.length + box.capacity()];
        System.arraycopy(bytes, 0, longer, 0, at);
        System.arraycopy(box.array(), 0, longer, at, box.capacity());
        System.arraycopy(bytes, at, longer, at + box.capacity(), bytes.length - at);
        bytes = longer;
    }

    /** Replaces the four linear numbers of the track's display matrix, each −1, 0 or 1. */
    void displayMatrix(int a, int b, int c, int d) {
        int matrix = find("moov", "trak", "tkhd") + 48;
        int one = 1 << 16;
        view().putInt(matrix, a * one).putInt(matrix + 4, b * one);
        view().putInt(matrix + 12, c * one).putInt(matrix + 16, d * one);
    }

    /** Changes one step of a clip whose steps all differ from their neighbours, so that each has an entry of its own. */
    void step(int index, int ticks) {
        int steps = table("stts");
        if (view().getInt(steps + 16 + 8 * index) != 1) {
            throw new IllegalStateException("step " + index + " shares its entry");
        }
        view().putInt(steps + 20 + 8 * index, ticks);
    }

    /** Lets the edit list show that many seconds of the track. */
    void show(int seconds) {
        view().putInt(find("moov", "trak", "edts", "elst") + 16, seconds * view().getInt(find("moov", "mvhd") + 20));
    }

    /**
     * Puts a display orientation message (H.264, annex D: 90° anticlockwise, for all that follows) before the first coded picture.
     */
    void turnInTheStream() {
        byte[] message = {0, 0, 0, 7, 6, 47, 3, 8, 0, 9, (byte) 0x80};
        int offsets = table("stco");
        int at = view().getInt(offsets + 16);
        for (int i = 1; i < view().getInt(offsets + 12); i++) {
            int slot = offsets + 16 + 4 * i;
            view().putInt(slot, view().getInt(slot) + message.length);
        }
        int sizes = table("stsz");
        view().putInt(sizes + 20, view().getInt(sizes + 20) + message.length);
        int data = find("mdat");
        view().putInt(data, view().getInt(data) + message.length);
        byte[] longer = new byte[bytes.length + message.length];
        System.arraycopy(bytes, 0, longer, 0, at);
        System.arraycopy(message, 0, longer, at, message.length);
        System.arraycopy(bytes, at, longer, at + message.length, bytes.length - at);
        bytes = longer;
    }

    void cutTo(double share) {
        bytes = Arrays.copyOf(bytes, (int) (bytes.length * share));
    }

    /** Turns the index into padding. */
    void loseIndex() {
        System.arraycopy("free".getBytes(StandardCharsets.ISO_8859_1), 0, bytes, find("moov") + 4, 4);
    }

    /** Makes the picture track call itself a sound track. */
    void callItSound() {
        int handler = find("moov", "trak", "mdia", "hdlr") + 16;
        System.arraycopy("soun".getBytes(StandardCharsets.ISO_8859_1), 0, bytes, handler, 4);
    }

    /** Makes both boxes that state a size claim another. */
    void claimSize(int width, int height) {
        int header = find("moov", "trak", "tkhd");
        view().putInt(header + 84, width << 16).putInt(header + 88, height << 16);
        int entry = find("moov", "trak", "mdia", "minf", "stbl", "stsd", "avc1");
        view().putShort(entry + 32, (short) width).putShort(entry + 34, (short) height);
    }

    /** Overwrites the inside of one coded picture, its length and kind left alone. */
    void spoilPicture(int index) {
        int sizes = table("stsz");
        int at = view().getInt(table("stco") + 16);
        for (int i = 0; i < index; i++) {
            at += view().getInt(sizes + 20 + 4 * i);
        }
        int size = view().getInt(sizes + 20 + 4 * index);
        for (int i = 8; i < size; i++) {
            bytes[at + i] = (byte) (i * 37 + 11);
        }
    }
}
