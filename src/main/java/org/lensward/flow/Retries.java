package org.lensward.flow;

import java.time.Clock;
import java.time.Duration;
import java.util.concurrent.ThreadLocalRandom;
import org.apache.camel.Exchange;
import org.apache.camel.Message;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Puts a booking that failed back into the queue, to be delivered later; after so many tries it is parked. The waiting is the broker's:
 * no consumer is held meanwhile, so that one booking which fails stops no other, and a restart forgets neither the booking nor its tries.
 */
public final class Retries {

    private static final Logger LOG = LoggerFactory.getLogger(Retries.class);

    private static final Duration FIRST = Duration.ofMillis(500);
    private static final Duration LONGEST = Duration.ofSeconds(30);
    private static final int DOUBLINGS = 6;

    private final RecordHealth health;
    private final Clock clock;

    public Retries(RecordHealth health, Clock clock) {
        this.health = health;
        this.clock = clock;
    }

    /** Sets the header {@code tries}, the time of delivery and the property {@code next}: the route that takes it from here. */
    public void next(Exchange exchange) {
        Message message = exchange.getMessage();
        Exception failure = exchange.getProperty(Exchange.EXCEPTION_CAUGHT, Exception.class);
        int tries = message.getHeader("tries", 0, Integer.class);
        int allowed = exchange.getProperty("allowed", Integer.class);
        boolean asked =
                !(failure instanceof RecordRefusal refusal && refusal.reason().equals(RecordRefusal.TO_WAIT));
        if (asked && tries >= allowed) {
            exchange.setProperty("next", "direct:park");
            return;
        }
        Duration wait = longer(spread(pause(tries)), health.toWait());
        message.setHeader("tries", asked ? tries + 1 : tries);
        message.setHeader("_AMQ_SCHED_DELIVERY", clock.millis() + wait.toMillis());
        exchange.setProperty("next", "direct:requeue");
        LOG.warn(
                "{} again in {} ms, after {} ({} of {})",
                message.getHeader("booking", String.class).replaceFirst(" .*", ""),
                wait.toMillis(),
                Reason.of(failure),
                asked ? tries + 1 : tries,
                allowed);
    }

    /** Half a second, then twice as long each time, up to half a minute. */
    static Duration pause(int tries) {
        Duration pause = FIRST.multipliedBy(1L << Math.min(tries, DOUBLINGS));
        return pause.compareTo(LONGEST) > 0 ? LONGEST : pause;
    }

    /** Up to a quarter longer, so that many do not return at one moment. */
    private static Duration spread(Duration pause) {
        return pause.plusMillis(ThreadLocalRandom.current().nextLong(pause.toMillis() / 4 + 1));
    }

    private static Duration longer(Duration one, Duration other) {
        return one.compareTo(other) > 0 ? one : other;
    }
}
