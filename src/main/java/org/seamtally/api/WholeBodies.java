package org.seamtally.api;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpVersion;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.InputStream;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.seamtally.wire.ProblemReport;

/**
 * Waits for the whole of a body before a thread is given to its request: who sends a byte now and then holds a socket, and
 * nothing else. Such bodies are bounded each in size and time, and together in size. Job files are read as they come.
 */
@ApplicationScoped
public class WholeBodies {

    /** Largest body taken, bytes: a frame of 10 000 joints with every field given is a quarter of it. */
    static final long LARGEST = 16L << 20;

    // behind who asks (200), whether he may (100) and how often (50)
    private static final int ORDER = 40;

    // of the memory: what is on its way is not to crowd out what is worked on
    private static final int SHARE = 8;

    private final Duration longest;
    private final boolean open;
    private final long most;
    private final AtomicLong arrived = new AtomicLong();

    WholeBodies(@ConfigProperty(name = "quarkus.http.read-timeout") Duration longest, AccessSettings access) {
        this.longest = longest;
        this.open = !access.isOn();
        this.most = Math.max(LARGEST, Runtime.getRuntime().maxMemory() / SHARE);
    }

    /** @param body null where the request has none */
    static InputStream of(InputStream body) {
        return body == null ? InputStream.nullInputStream() : body;
    }

    /** What has arrived of bodies that are not whole, bytes. */
    long arrived() {
        return arrived.get();
    }

    void register(@Observes Filters filters) {
        filters.register(this::await, ORDER);
    }

    private void await(RoutingContext context) {
        HttpServerRequest request = context.request();
        if (request.isEnded() || !mayBring(request) || JobFileRequests.isOne(request) || !isKnown(context)) {
            context.next();
            return;
        }
        if ("100-continue".equalsIgnoreCase(request.getHeader("Expect"))) {
            // said here, once
            request.headers().remove("Expect");
            context.response().writeContinue();
        }
        new Arrival(context).begin();
    }

    private static boolean mayBring(HttpServerRequest request) {
        return request.version() == HttpVersion.HTTP_2
                || request.getHeader("Content-Length") != null
                || request.getHeader("Transfer-Encoding") != null;
    }

    /** Whoever is not will be refused, and nothing of his is read. */
    private boolean isKnown(RoutingContext context) {
        return open || SubjectRates.asking(context).isPresent();
    }

    /** One body on its way. */
    private final class Arrival {

        private final RoutingContext context;
        private final Buffer body = Buffer.buffer();
        private long timer;
        private boolean over;

        Arrival(RoutingContext context) {
            this.context = context;
        }

        void begin() {
            timer = context.vertx().setTimer(longest.toMillis(), late -> refuse(tooSlowReport()));
            context.request()
                    .handler(this::add)
                    .endHandler(ended -> whole())
                    // he is gone: there is nobody to be answered
                    .exceptionHandler(gone -> end())
                    .resume();
        }

        private synchronized void add(Buffer part) {
            if (over) {
                return;
            }
            body.appendBuffer(part);
            long all = arrived.addAndGet(part.length());
            if (body.length() > LARGEST) {
                refuse(Problems.tooLargeReport());
            } else if (all > most) {
                context.response().putHeader("Retry-After", Integer.toString(WaitingLine.RETRY_AFTER_S));
                refuse(WaitingLine.busyReport());
            }
        }

        private synchronized void whole() {
            if (end()) {
                context.setBody(body);
                context.next();
            }
        }

        private synchronized void refuse(ProblemReport problem) {
            if (end()) {
                context.response().putHeader("Connection", "close");
                SameMachine.hangUpSoon(context);
                SameMachine.answer(context, problem);
            }
        }

        /** Whether it was not over before. */
        private synchronized boolean end() {
            if (over) {
                return false;
            }
            over = true;
            context.vertx().cancelTimer(timer);
            arrived.addAndGet(-body.length());
            return true;
        }
    }

    private ProblemReport tooSlowReport() {
        return Problems.tooSlow("It may take " + longest.toSeconds() + " seconds to arrive.");
    }
}
