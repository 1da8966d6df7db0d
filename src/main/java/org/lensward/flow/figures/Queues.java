package org.lensward.flow.figures;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.apache.activemq.artemis.core.server.MessageReference;
import org.apache.activemq.artemis.core.server.Queue;
import org.apache.activemq.artemis.core.server.embedded.EmbeddedActiveMQ;

/** What waits in the adapter's own broker. A broker of the hospital's tells its own figures. */
final class Queues {

    static final String BOOKINGS = "lensward.bookings";
    static final List<String> ALL = List.of(BOOKINGS, "lensward.parked", "lensward.quarantine");

    private final Optional<EmbeddedActiveMQ> broker;
    private final Clock clock;

    Queues(Optional<EmbeddedActiveMQ> broker, Clock clock) {
        this.broker = broker;
        this.clock = clock;
    }

    /** Whether the broker is ours to look into. */
    boolean areOurs() {
        return broker.isPresent();
    }

    boolean areOpen() {
        return broker.map(each -> each.getActiveMQServer().isActive()).orElse(false)
                && ALL.stream().allMatch(each -> queue(each).isPresent());
    }

    /** How many wait. */
    long depth(String name) {
        return queue(name).map(Queue::getMessageCount).orElse(0L);
    }

    /** How long the oldest has waited; nothing where none waits. */
    Optional<Duration> oldest(String name) {
        return queue(name)
                .map(Queue::peekFirstMessage)
                .map(MessageReference::getMessage)
                .map(message -> Duration.between(Instant.ofEpochMilli(message.getTimestamp()), clock.instant()));
    }

    private Optional<Queue> queue(String name) {
        return broker.map(each -> each.getActiveMQServer().locateQueue(name));
    }
}
