package org.lensward.flow;

import jakarta.jms.ConnectionFactory;
import jakarta.jms.JMSException;
import jakarta.jms.Message;
import jakarta.jms.QueueBrowser;
import jakarta.jms.Session;
import java.time.Instant;
import java.util.Enumeration;
import java.util.Optional;
import org.apache.activemq.artemis.api.core.ActiveMQException;
import org.apache.activemq.artemis.api.core.SimpleString;
import org.apache.activemq.artemis.jms.client.ActiveMQSession;
import org.apache.camel.CamelContext;
import org.springframework.jms.connection.SessionProxy;

/** How the work flows now: for those who run it. Holds no patient data. */
public final class FlowState {

    private final BrokerSessions broker;
    private final CamelContext camel;
    private final Watcher watcher;
    private final RecordHealth health;
    private final DryRun dryRun;

    FlowState(ConnectionFactory connections, CamelContext camel, Watcher watcher, RecordHealth health, DryRun dryRun) {
        this.broker = new BrokerSessions(connections);
        this.camel = camel;
        this.watcher = watcher;
        this.health = health;
        this.dryRun = dryRun;
    }

    /**
     * One queue.
     *
     * @param depth how many wait in it, those to be tried again later among them
     * @param oldest since when the first of those due now has waited
     */
    public record Waiting(long depth, Optional<Instant> oldest) {}

    /**
     * The whole.
     *
     * @param look the last look at the record that counted
     * @param bookings bookings that wait to be planned
     * @param inHand bookings being planned by this adapter
     * @param parked bookings set aside
     * @param quarantined HL7 messages set aside
     * @param record how the record does
     * @param dryRun whether nothing is written
     */
    public record Snapshot(
            Optional<Watcher.Look> look,
            Waiting bookings,
            int inHand,
            Waiting parked,
            Waiting quarantined,
            RecordHealth.State record,
            boolean dryRun) {}

    /** How it is now. */
    public Snapshot now() {
        return broker.with(session -> new Snapshot(
                watcher.last(),
                waiting(session, "lensward.bookings"),
                camel.getInflightRepository().size("plan"),
                waiting(session, SetAside.Kind.BOOKING.queue()),
                waiting(session, SetAside.Kind.MESSAGE.queue()),
                health.now(),
                dryRun.isOn()));
    }

    private static Waiting waiting(Session session, String name) throws JMSException {
        try (QueueBrowser browser = session.createBrowser(session.createQueue(name))) {
            Enumeration<?> waiting = browser.getEnumeration();
            Optional<Instant> oldest = waiting.hasMoreElements()
                    ? Optional.of(Instant.ofEpochMilli(((Message) waiting.nextElement()).getJMSTimestamp()))
                    : Optional.empty();
            return new Waiting(depth(session, name), oldest);
        }
    }

    /** Counting by browsing would read every message. */
    private static long depth(Session session, String name) throws JMSException {
        Session inner = session instanceof SessionProxy proxy ? proxy.getTargetSession() : session;
        try {
            return ((ActiveMQSession) inner)
                    .getCoreSession()
                    .queueQuery(SimpleString.of(name))
                    .getMessageCount();
        } catch (ActiveMQException failure) {
            throw new IllegalStateException("The broker does not tell how much waits", failure);
        }
    }
}
