package org.seamtally.api;

import io.netty.bootstrap.ChannelInitializerExtension;
import io.netty.channel.Channel;
import io.netty.channel.ChannelHandlerContext;
import io.netty.channel.ChannelInboundHandlerAdapter;
import io.quarkus.vertx.http.ManagementInterface;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.net.impl.ConnectionBase;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Duration;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.eclipse.microprofile.config.ConfigProvider;

/**
 * Ends a connection on which the head of a request is not whole in time, however many bytes of it come meanwhile: the server's
 * own time-outs begin anew with each byte. The time is that of a body, {@code quarkus.http.read-timeout}, from the first byte
 * on; with TLS the handshake counts too.
 *
 * <p>A connection is watched from below HTTP, by an extension that Netty loads where {@value
 * io.netty.bootstrap.ChannelInitializerExtension#EXTENSIONS_SYSTEM_PROPERTY} says so, and told from above when a head was
 * read.
 */
@ApplicationScoped
public class SlowHeads {

    // before all that may answer
    private static final int FIRST = 2000;

    void register(@Observes Filters filters) {
        filters.register(SlowHeads::read, FIRST);
    }

    void register(@Observes ManagementInterface management) {
        management.router().route().order(-FIRST).handler(SlowHeads::read);
    }

    /** A head was read: until it is answered, what comes is its body, or waits. */
    static void read(RoutingContext context) {
        Channel channel = ((ConnectionBase) context.request().connection()).channel();
        Watch watch = channel.pipeline().get(Watch.class);
        if (watch != null) {
            watch.read();
            context.addEndHandler(ended -> channel.eventLoop().execute(watch::answered));
        }
        context.next();
    }

    /** Has each connection watched. */
    public static final class Extension extends ChannelInitializerExtension {

        @Override
        public void postInitializeServerChildChannel(Channel channel) {
            channel.pipeline()
                    .addFirst(new Watch(
                            ConfigProvider.getConfig().getValue("quarkus.http.read-timeout", Duration.class)));
        }
    }

    /** Watches one connection, on its own event loop. */
    private static final class Watch extends ChannelInboundHandlerAdapter {

        private final Duration longest;
        private int unanswered;
        private Future<?> deadline;

        Watch(Duration longest) {
            this.longest = longest;
        }

        @Override
        public void channelRead(ChannelHandlerContext context, Object bytes) {
            if (unanswered == 0 && deadline == null) {
                deadline =
                        context.executor().schedule(() -> context.close(), longest.toMillis(), TimeUnit.MILLISECONDS);
            }
            context.fireChannelRead(bytes);
        }

        @Override
        public void channelInactive(ChannelHandlerContext context) {
            stop();
            context.fireChannelInactive();
        }

        void read() {
            unanswered++;
            stop();
        }

        void answered() {
            unanswered--;
        }

        private void stop() {
            if (deadline != null) {
                deadline.cancel(false);
                deadline = null;
            }
        }
    }
}
