package org.seamtally.load;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;

/** Passes TCP connections on to a port of this machine: at once, late, or, while it stalls, not at all. */
final class SlowRelay implements AutoCloseable {

    private final ServerSocket listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    private final int to;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition goesOn = lock.newCondition();
    private boolean stalls;
    private volatile Duration delay = Duration.ZERO;

    /** @param to the port that connections are passed on to */
    SlowRelay(int to) throws IOException {
        this.to = to;
        thread("relay", this::accept);
    }

    int port() {
        return listening.getLocalPort();
    }

    /** Bytes are passed on so much later, in either direction. */
    void delay(Duration by) {
        delay = by;
    }

    /** Bytes are taken and not passed on; connections stay open, as behind a network that drops packets. */
    void stall() {
        stalls(true);
    }

    /** What was held back goes on. */
    void goOn() {
        stalls(false);
    }

    private void stalls(boolean now) {
        lock.lock();
        try {
            stalls = now;
            goesOn.signalAll();
        } finally {
            lock.unlock();
        }
    }

    private void accept() {
        try {
            while (true) {
                Socket from = listening.accept();
                thread("relay", () -> connect(from));
            }
        } catch (IOException e) {
            if (!listening.isClosed()) {
                throw new java.io.UncheckedIOException(e);
            }
        }
    }

    private void connect(Socket from) {
        open.add(from);
        try {
            awaitPassage();
            Socket there = new Socket(InetAddress.getLoopbackAddress(), to);
            open.add(there);
            from.setTcpNoDelay(true);
            there.setTcpNoDelay(true);
            thread("relay-back", () -> pass(there, from));
            pass(from, there);
        } catch (IOException e) {
            // nothing listens there just now: whoever asked sees the connection end
            end(from);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void pass(Socket from, Socket there) {
        byte[] bytes = new byte[1 << 16];
        try {
            InputStream in = from.getInputStream();
            OutputStream out = there.getOutputStream();
            for (int got = in.read(bytes); got >= 0; got = in.read(bytes)) {
                Thread.sleep(delay.toMillis());
                awaitPassage();
                out.write(bytes, 0, got);
                out.flush();
            }
        } catch (IOException e) {
            // either side has ended it: both are ended below
            Thread.onSpinWait();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            end(from);
            end(there);
        }
    }

    private void awaitPassage() throws InterruptedException {
        lock.lock();
        try {
            while (stalls) {
                goesOn.await();
            }
        } finally {
            lock.unlock();
        }
    }

    private void end(Socket socket) {
        open.remove(socket);
        try {
            socket.close();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static void thread(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        listening.close();
        goOn();
        open.forEach(this::end);
    }
}
