package org.seamtally.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.concurrent.atomic.AtomicBoolean;
import org.h2.store.fs.FileBaseDefault;
import org.h2.store.fs.FilePathWrapper;

/** Files under {@code filling:} lie on a disk that is full when told so. */
public final class FillingDisk extends FilePathWrapper {

    /** Whether nothing more goes onto it. */
    static final AtomicBoolean FULL = new AtomicBoolean();

    @Override
    public String getScheme() {
        return "filling";
    }

    @Override
    public FileChannel open(String mode) throws IOException {
        return new Channel(getBase().open(mode));
    }

    private static final class Channel extends FileBaseDefault {

        private final FileChannel file;

        Channel(FileChannel file) {
            this.file = file;
        }

        @Override
        public int write(ByteBuffer bytes, long position) throws IOException {
            if (FULL.get()) {
                throw new IOException("No space left on device");
            }
            return file.write(bytes, position);
        }

        @Override
        public int read(ByteBuffer bytes, long position) throws IOException {
            return file.read(bytes, position);
        }

        @Override
        public long size() throws IOException {
            return file.size();
        }

        @Override
        protected void implTruncate(long size) throws IOException {
            file.truncate(size);
        }

        @Override
        public void force(boolean metaData) throws IOException {
            file.force(metaData);
        }

        @Override
        public java.nio.channels.FileLock tryLock(long position, long size, boolean shared) throws IOException {
            return file.tryLock(position, size, shared);
        }

        @Override
        protected void implCloseChannel() throws IOException {
            file.close();
        }
    }
}
