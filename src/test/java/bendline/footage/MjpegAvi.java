package bendline.footage;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;

/** The smallest AVI that holds JPEG pictures, put together byte by byte. */
final class MjpegAvi {

    private MjpegAvi() {}

    static Path write(Path file, List<byte[]> pictures, int width, int height, int rate) throws IOException {
        byte[] main = numbers(1_000_000 / rate, 0, 0, 0, pictures.size(), 0, 1, 0, width, height, 0, 0, 0, 0);
        byte[] stream = join(name("vids"), name("MJPG"), numbers(0, 0, 0, 1, rate, 0, pictures.size(), 0, -1, 0, 0, 0));
        byte[] format = join(numbers(40, width, height, 24 << 16 | 1), name("MJPG"), numbers(0, 0, 0, 0, 0));
        byte[] header = list("hdrl", chunk("avih", main), list("strl", chunk("strh", stream), chunk("strf", format)));
        byte[][] frames = pictures.stream().map(p -> chunk("00dc", p)).toArray(byte[][]::new);
        byte[] body = join(name("AVI "), header, list("movi", frames));
        return Files.write(file, chunk("RIFF", body));
    }

    static byte[] jpeg(BufferedImage image) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "jpg", out);
        return out.toByteArray();
    }

    /** Makes a JPEG claim another size in its frame header. */
    static byte[] claiming(byte[] jpeg, int width, int height) {
        byte[] liar = jpeg.clone();
        for (int i = 0; i + 9 < liar.length; i++) {
            if ((liar[i] & 0xff) == 0xff && (liar[i + 1] & 0xff) == 0xc0) {
                ByteBuffer.wrap(liar).putShort(i + 5, (short) height).putShort(i + 7, (short) width);
                return liar;
            }
        }
        throw new IllegalArgumentException("no baseline frame header");
    }

    private static byte[] list(String name, byte[]... parts) {
        return chunk("LIST", join(name(name), join(parts)));
    }

    private static byte[] chunk(String name, byte[] content) {
        byte[] pad = new byte[content.length % 2];
        return join(name(name), numbers(content.length), content, pad);
    }

    private static byte[] name(String name) {
        return name.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] numbers(int... values) {
        ByteBuffer b = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int v : values) {
            b.putInt(v);
        }
        return b.array();
    }

    private static byte[] join(byte[]... parts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            out.writeBytes(part);
        }
        return out.toByteArray();
    }
}
