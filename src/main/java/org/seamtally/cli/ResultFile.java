package org.seamtally.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import org.seamtally.wire.Json;

/**
 * The file that results are written to, and beside it, until it is whole, a small one that says what they are made from:
 * {@code OUT.progress}. The small one is there before the first result, so that whatever was written can be gone on with.
 * No two runs write to the same file: it is locked while one does.
 */
final class ResultFile implements Closeable {

    // pieces that the disk is given at a time; what is in the last one is lost by a kill, and computed again
    private static final int BUFFER = 1 << 16;

    private final Path file;
    private final FileChannel channel;
    private OutputStream out;

    private ResultFile(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /**
     * A new file of results.
     *
     * @param origin empty where it cannot be gone on with later
     * @throws NotBegunException where there is such a file
     */
    static ResultFile create(Path file, Optional<ResultOrigin> origin) throws IOException, NotBegunException {
        refuseIfThere(file);
        if (origin.isPresent()) {
            Path written = file.resolveSibling(file.getFileName() + ".progress.new");
            Files.write(written, Json.mapper().writeValueAsBytes(origin.get()));
            Files.move(written, beside(file), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        }
        try {
            return locked(file, FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE));
        } catch (FileAlreadyExistsException e) {
            throw alreadyThere(file);
        }
    }

    /** @throws NotBegunException where the file is there: results are never written over */
    static void refuseIfThere(Path file) throws NotBegunException {
        if (Files.exists(file)) {
            throw alreadyThere(file);
        }
    }

    private static NotBegunException alreadyThere(Path file) {
        return new NotBegunException(file + " is there already and is not written over: go on with it by --resume, "
                + "or give another name");
    }

    /** A file that an earlier run did not end. */
    static ResultFile reopen(Path file) throws IOException, NotBegunException {
        return locked(file, FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE));
    }

    private static ResultFile locked(Path file, FileChannel channel) throws IOException, NotBegunException {
        try {
            if (channel.tryLock() != null) {
                return new ResultFile(file, channel);
            }
        } catch (OverlappingFileLockException e) {
            // by this very process: the same as by another
        } catch (IOException e) {
            channel.close();
            throw e;
        }
        channel.close();
        throw new NotBegunException("another run is writing to " + file);
    }

    private static Path beside(Path file) {
        return file.resolveSibling(file.getFileName() + ".progress");
    }

    /**
     * What the results of a file were made from; empty where nothing says so.
     *
     * @throws NotBegunException where it cannot be understood
     */
    static Optional<ResultOrigin> origin(Path file) throws IOException, NotBegunException {
        try {
            return Optional.of(Json.mapper().readValue(Files.readAllBytes(beside(file)), ResultOrigin.class));
        } catch (NoSuchFileException e) {
            return Optional.empty();
        } catch (JsonProcessingException e) {
            throw new NotBegunException(beside(file) + " was not written by this program, or is damaged");
        }
    }

    /** What is written so far; not to be closed. */
    InputStream written() throws IOException {
        // by the same channel: where another one of the same file is closed, the lock goes with it on many systems
        return new BufferedInputStream(Channels.newInputStream(channel.position(0)), BUFFER);
    }

    /**
     * Where results go.
     *
     * @param from position of the first new byte: what stands there and beyond is dropped
     */
    OutputStream from(long from) throws IOException {
        channel.truncate(from);
        channel.position(from);
        out = new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER);
        return out;
    }

    /** The file is whole: it is brought to the disk, and what stood beside it goes. */
    void whole() throws IOException {
        if (out != null) {
            out.flush();
        }
        channel.force(true);
        Files.deleteIfExists(beside(file));
    }

    /** Leaves what is written as it is. */
    @Override
    public void close() throws IOException {
        try (channel) {
            if (out != null) {
                out.flush();
            }
        }
    }
}
