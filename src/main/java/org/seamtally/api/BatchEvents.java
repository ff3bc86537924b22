package org.seamtally.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.seamtally.batch.BatchState;
import org.seamtally.batch.Batches;
import org.seamtally.kept.UnavailableException;
import org.seamtally.wire.BatchAnswer;
import org.seamtally.wire.Json;

/**
 * What listeners to batches hear. A batch is looked at once a second, however many listen to it, by a worker thread that is
 * free again at once; listeners hold none.
 */
@ApplicationScoped
public class BatchEvents {

    private static final Duration PACE = Duration.ofSeconds(1);

    // looks without news until a comment shows that the connection lives: well below what proxies wait
    private static final int QUIET_LOOKS = 15;

    // how long a listener whose connection broke waits before he asks again
    private static final long RECONNECT_MS = 3_000;

    private static final String END = "end";

    private final Batches batches;
    private final Sse sse;
    private final Stopping stopping;
    private final Map<UUID, Multi<Look>> looks = new ConcurrentHashMap<>();

    BatchEvents(Batches batches, Sse sse, Stopping stopping) {
        this.batches = batches;
        this.sse = sse;
        this.stopping = stopping;
    }

    /** Whether an event's id is that of a batch's last one. */
    static boolean isEnd(String eventId) {
        return END.equals(eventId);
    }

    static boolean isEnded(BatchAnswer batch) {
        return List.of(BatchState.DONE.word(), BatchState.CANCELLED.word()).contains(batch.state());
    }

    /** What a look at a batch found. */
    private sealed interface Look {

        record Seen(BatchAnswer batch) implements Look {}

        /** It is removed, or the service stops: whoever asks again is told which. */
        record Gone() implements Look {}

        /** What is kept could not be reached; it may be back at the next look. */
        record Unknown() implements Look {}
    }

    /**
     * A batch's events until it ends.
     *
     * @param shop whose it is
     * @param now what it is now: the first event
     */
    Multi<OutboundSseEvent> of(String shop, UUID batch, BatchAnswer now) {
        Listener listener = new Listener();
        Multi<Look> first = Multi.createFrom().item(new Look.Seen(now));
        Multi<Look> all = isEnded(now)
                ? first
                // a listener who takes his time hears the latest, and keeps nobody else waiting
                : Multi.createBy()
                        .concatenating()
                        .streams(first, shared(shop, batch).onOverflow().dropPreviousItems());
        return all.onItem()
                .transformToMultiAndConcatenate(look -> Multi.createFrom().iterable(listener.hears(look)))
                .select()
                .first(Optional::isPresent)
                .map(Optional::orElseThrow);
    }

    private Multi<Look> shared(String shop, UUID batch) {
        return looks.computeIfAbsent(
                batch,
                id -> Multi.createFrom()
                        .ticks()
                        .every(PACE)
                        .onOverflow()
                        .drop()
                        .onItem()
                        .transformToUniAndConcatenate(tick -> Uni.createFrom()
                                .item(() -> look(shop, id))
                                .runSubscriptionOn(Infrastructure.getDefaultWorkerPool()))
                        .onTermination()
                        .invoke(() -> looks.remove(id))
                        .broadcast()
                        .withCancellationAfterLastSubscriberDeparture()
                        .toAllSubscribers());
    }

    private Look look(String shop, UUID id) {
        if (stopping.isTold()) {
            return new Look.Gone();
        }
        try {
            Optional<BatchAnswer> found = batches.status(shop, id);
            return found.isPresent() ? new Look.Seen(found.get()) : new Look.Gone();
        } catch (UnavailableException e) {
            return new Look.Unknown();
        }
    }

    /** Batches that are looked at. */
    int watched() {
        return looks.size();
    }

    /** One who listens: what he has heard, and how long ago. */
    private final class Listener {

        private String heard;
        private int quiet;

        /** Events for a look; an empty one ends the stream. */
        List<Optional<OutboundSseEvent>> hears(Look look) {
            if (look instanceof Look.Gone) {
                return List.of(Optional.empty());
            }
            if (look instanceof Look.Seen seen) {
                String json = json(seen.batch());
                if (!json.equals(heard)) {
                    heard = json;
                    quiet = 0;
                    return isEnded(seen.batch())
                            ? List.of(Optional.of(event(json, END)), Optional.empty())
                            : List.of(Optional.of(event(json, null)));
                }
            }
            quiet++;
            if (quiet < QUIET_LOOKS) {
                return List.of();
            }
            quiet = 0;
            return List.of(Optional.of(sse.newEventBuilder().comment("here").build()));
        }

        private OutboundSseEvent event(String json, String id) {
            OutboundSseEvent.Builder event =
                    sse.newEventBuilder().reconnectDelay(RECONNECT_MS).data(String.class, json);
            return id == null ? event.build() : event.id(id).build();
        }
    }

    private static String json(BatchAnswer batch) {
        try {
            return Json.mapper().writeValueAsString(batch);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an answer can always be written", e);
        }
    }
}
