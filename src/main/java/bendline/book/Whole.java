package bendline.book;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.UUID;

/** Files that are in their place whole or not at all, and on the disk rather than on their way to it. */
final class Whole {

    /** Head of the names of files that are still being written; one left behind by a crash holds nothing anybody needs. */
    static final String UNFINISHED = ".unfinished-";

    private Whole() {}

    /** Something that writes. */
    interface Writing {
        void to(OutputStream out) throws IOException;
    }

    /**
     * Writes a file.
     *
     * @return the SHA-256 of what was written, hexadecimal
     */
    static String write(Path file, Writing writing) throws IOException {
        Path beside = unfinished(file.toAbsolutePath().getParent());
        try {
            MessageDigest digest = sha256();
            try (OutputStream out = new DigestOutputStream(Files.newOutputStream(beside), digest)) {
                writing.to(out);
            }
            sync(beside);
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE);
            return HexFormat.of().formatHex(digest.digest());
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    /** A name in a folder for a file that is not finished. */
    static Path unfinished(Path folder) {
        return folder.resolve(UNFINISHED + UUID.randomUUID());
    }

    /** Makes sure that a file has reached the disk. */
    static void sync(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** The SHA-256 of a file, hexadecimal. */
    static String sha256(Path file) throws IOException {
        MessageDigest digest = sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
