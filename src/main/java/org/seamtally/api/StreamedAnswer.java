package org.seamtally.api;

import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.io.OutputStream;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * An answer that is written while it is worked out. Where that fails half-way its connection is cut, so that nobody takes what
 * there is for the whole: left to itself the framework writes the problem behind it, and ends the answer.
 */
final class StreamedAnswer implements StreamingOutput {

    // what was written before may still be on its way to a slow reader; he is not waited for any longer
    private static final long CUT_WITHIN_S = 5;

    /** What writes the answer. */
    @FunctionalInterface
    interface Lines {
        void writeTo(OutputStream out) throws IOException;
    }

    private final Supplier<OpenStreams.Place> place;
    private final HttpServerResponse response;
    private final Runnable cut;
    private final Lines lines;

    /**
     * An answer to be written.
     *
     * @param place is taken when it is written, which for HEAD it never is, and given back when it ends, however it does
     */
    StreamedAnswer(Supplier<OpenStreams.Place> place, RoutingContext context, Lines lines) {
        this.place = place;
        this.response = context.response();
        this.cut = () -> context.request()
                .connection()
                .close()
                .toCompletionStage()
                .toCompletableFuture()
                .orTimeout(CUT_WITHIN_S, TimeUnit.SECONDS)
                .join();
        this.lines = lines;
    }

    @Override
    public void write(OutputStream out) throws IOException {
        boolean whole = false;
        OpenStreams.Place held = place.get();
        try (held) {
            lines.writeTo(out);
            whole = true;
        } finally {
            // before anything is on its way, the problem can still be the answer
            if (!whole && response.headWritten()) {
                cut();
            }
        }
    }

    private void cut() {
        try {
            cut.run();
        } catch (CompletionException e) {
            // closed already, or closing: what made the answer fail is what is told
            return;
        }
    }
}
