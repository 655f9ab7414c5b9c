package bendline.footage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Looks at a file's first bytes before any decoder sees it, so that what is plainly no film is refused with the reason: the
 * decoders' own errors name no cause, and a text that poses as a film must not be opened at all.
 */
final class FileKind {

    private static final int HEAD = 4096;
    private static final int BOX_HEADER = 8;
    private static final int MOST_BOXES = 100_000;
    private static final String AGAIN = "copy the clip from the phone again.";

    private FileKind() {}

    /** Does nothing for a file that may be a film. */
    static void requireFilm(Path file) {
        String name = "\"" + file + "\"";
        if (!Files.exists(file)) {
            throw new FootageException("There is no file " + name + "; check the name and the folder.");
        }
        if (Files.isDirectory(file)) {
            throw new FootageException(name + " is a folder, not a clip; give the clip's own name.");
        }
        if (!Files.isRegularFile(file)) {
            throw new FootageException(name + " is not a plain file; copy the clip to this computer first.");
        }
        if (!Files.isReadable(file)) {
            throw new FootageException(name + " may not be read; check its permissions.");
        }
        try (FileChannel channel = FileChannel.open(file)) {
            String fault = fault(channel);
            if (fault != null) {
                throw new FootageException(name + " " + fault);
            }
        } catch (IOException e) {
            throw new FootageException(name + " cannot be read; copy it to this computer's own disk.", e);
        }
    }

    private static @Nullable String fault(FileChannel channel) throws IOException {
        if (channel.size() == 0) {
            return "is empty (0 bytes); " + AGAIN;
        }
        ByteBuffer head = ByteBuffer.allocate(HEAD);
        while (head.hasRemaining() && channel.read(head, head.position()) > 0) {
            // A channel may hand over fewer bytes than asked for.
        }
        head.flip();
        if (isPhoto(head)) {
            return "is a photo, not a film; give the clip instead.";
        }
        if (starts(head, 0, "GIF8")) {
            return "is a GIF picture, whose frame times are no measure; give the clip as the phone recorded it.";
        }
        if (isSound(head)) {
            return "holds sound, not pictures; give a clip that shows the cast.";
        }
        if (starts(head, 0, "PK\3\4") || starts(head, 0, "7z\u00bc\u00af") || starts(head, 0, "\u001f\u008b")) {
            return "is an archive, not a film; unpack it and give the clip inside.";
        }
        if (isText(head)) {
            return "is text, not a film; give the clip itself.";
        }
        return isBoxed(head) ? boxFault(channel) : null;
    }

    private static boolean isPhoto(ByteBuffer head) {
        boolean still = starts(head, 4, "ftyphei") || starts(head, 4, "ftypmif1") || starts(head, 4, "ftypavif");
        return still
                || starts(head, 0, "\u00ff\u00d8\u00ff")
                || starts(head, 0, "\u0089PNG")
                || (starts(head, 0, "BM") && head.limit() > 14 && head.getInt(6) == 0)
                || (starts(head, 0, "RIFF") && starts(head, 8, "WEBP"))
                || starts(head, 0, "II*\0")
                || starts(head, 0, "MM\0*");
    }

    private static boolean isSound(ByteBuffer head) {
        return starts(head, 0, "ID3")
                || starts(head, 0, "fLaC")
                || starts(head, 0, "OggS")
                || (starts(head, 0, "RIFF") && starts(head, 8, "WAVE"));
    }

    /** Text holds no control characters but line ends and tabs, and is valid UTF-8. */
    private static boolean isText(ByteBuffer head) {
        for (int i = 0; i < head.limit(); i++) {
            int b = head.get(i) & 0xff;
            if (b < 0x20 && b != '\n' && b != '\r' && b != '\t' && b != '\f') {
                return false;
            }
        }
        ByteBuffer whole = head.duplicate();
        // A character may be cut by the end of what was read.
        whole.limit(head.limit() == HEAD ? HEAD - 3 : head.limit());
        for (int cut = 0; cut < 4 && cut <= whole.limit(); cut++) {
            try {
                ByteBuffer part = whole.duplicate();
                part.limit(whole.limit() - cut);
                StandardCharsets.UTF_8.newDecoder().decode(part);
                return true;
            } catch (CharacterCodingException cutCharacter) {
                // Tried again one byte shorter.
            }
        }
        return false;
    }

    private static boolean isBoxed(ByteBuffer head) {
        return starts(head, 4, "ftyp") || starts(head, 4, "moov") || starts(head, 4, "mdat") || starts(head, 4, "wide");
    }

    /** An MP4 or MOV needs its index, the moov box; a recording that was stopped hard never got it. */
    private static @Nullable String boxFault(FileChannel channel) throws IOException {
        ByteBuffer header = ByteBuffer.allocate(2 * BOX_HEADER);
        long at = 0;
        for (int n = 0; n < MOST_BOXES && at + BOX_HEADER <= channel.size(); n++) {
            header.clear();
            channel.read(header, at);
            if (starts(header, 4, "moov")) {
                return null;
            }
            long size = Integer.toUnsignedLong(header.getInt(0));
            if (size == 1 && header.position() == 2 * BOX_HEADER) {
                size = header.getLong(BOX_HEADER);
            } else if (size == 0) {
                size = channel.size() - at;
            }
            if (size < BOX_HEADER) {
                return "is damaged: its structure breaks off at byte " + at + "; " + AGAIN;
            }
            at = size > channel.size() - at ? channel.size() : at + size;
        }
        return "is cut short: the index that a recording gets at its end is missing; " + AGAIN;
    }

    private static boolean starts(ByteBuffer head, int at, String bytes) {
        if (head.limit() < at + bytes.length()) {
            return false;
        }
        for (int i = 0; i < bytes.length(); i++) {
            if ((head.get(at + i) & 0xff) != bytes.charAt(i)) {
                return false;
            }
        }
        return true;
    }
}
