package org.lensward.flow;

import jakarta.jms.ConnectionFactory;
import jakarta.jms.JMSException;
import jakarta.jms.Message;
import jakarta.jms.MessageConsumer;
import jakarta.jms.QueueBrowser;
import jakarta.jms.Session;
import jakarta.jms.TextMessage;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.lensward.flow.SetAside.Kind;
import org.lensward.record.incoming.RefusedInput;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What is set aside for a person, and how it is taken up again. Taking up is one broker transaction for each: whatever happens in the
 * middle, it is either still set aside or on its way.
 */
public final class ParkedBookings {

    private static final Logger LOG = LoggerFactory.getLogger(ParkedBookings.class);

    private final BrokerSessions broker;
    private final Supplier<MessageDesk> desk;

    /**
     * Of one broker.
     *
     * @param connections to the broker
     * @param desk where HL7 messages are read and stored
     */
    public ParkedBookings(ConnectionFactory connections, Supplier<MessageDesk> desk) {
        this.broker = new BrokerSessions(connections);
        this.desk = desk;
    }

    /** Everything set aside, the oldest of each kind first. */
    public List<SetAside> all() {
        List<SetAside> all = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            all.addAll(broker.with(session -> browse(session, kind)));
        }
        return all;
    }

    private static List<SetAside> browse(Session session, Kind kind) throws JMSException {
        List<SetAside> found = new ArrayList<>();
        try (QueueBrowser browser = session.createBrowser(session.createQueue(kind.queue()))) {
            for (Object each : Collections.list(browser.getEnumeration())) {
                found.add(read((Message) each, kind));
            }
        }
        return found;
    }

    private static SetAside read(Message message, Kind kind) throws JMSException {
        String key = Optional.ofNullable(message.getStringProperty(BrokerSessions.KEY))
                .orElse("");
        String reason = Optional.ofNullable(message.getStringProperty("reason")).orElse(Reason.GIVEN_UP);
        String detail = Optional.ofNullable(message.getStringProperty("detail")).orElse("");
        int tries = message.propertyExists("tries") ? message.getIntProperty("tries") : 0;
        return new SetAside(
                kind,
                key.replaceFirst(" .*", ""),
                kind == Kind.MESSAGE ? reason.replaceFirst(":.*", "") : reason,
                kind == Kind.MESSAGE ? reason : detail,
                Instant.ofEpochMilli(message.getJMSTimestamp()),
                tries);
    }

    /**
     * Takes up all that fit, such as those of one reason or age. A booking is queued again; a message is read and stored again, and
     * stays set aside if it still cannot be.
     *
     * @return how many were taken up
     */
    public int replay(Predicate<SetAside> fits) {
        int taken = 0;
        for (SetAside each : all()) {
            if (fits.test(each) && replay(each.kind(), each.name())) {
                taken++;
            }
        }
        return taken;
    }

    /** Takes up one by its name; false if nothing of that name is set aside any more, or it still cannot be stored. */
    public boolean replay(Kind kind, String name) {
        if (!name.matches("[A-Za-z0-9/.-]{1,80}")) {
            return false;
        }
        boolean taken = broker.with(session -> replay(session, kind, name));
        if (taken) {
            LOG.info("{} taken up again", name);
        }
        return taken;
    }

    private boolean replay(Session session, Kind kind, String name) throws JMSException {
        String named = BrokerSessions.KEY + (kind == Kind.BOOKING ? " LIKE '" + name + " %'" : " = '" + name + "'");
        boolean taken = false;
        try (MessageConsumer consumer = session.createConsumer(session.createQueue(kind.queue()), named)) {
            Message message = consumer.receiveNoWait();
            while (message != null && takenUp(session, message)) {
                session.commit();
                taken = true;
                message = consumer.receiveNoWait();
            }
        }
        return taken;
    }

    private boolean takenUp(Session session, Message message) throws JMSException {
        if (message instanceof TextMessage booking) {
            BrokerSessions.queue(session, booking.getText());
            return true;
        }
        try {
            desk.get().take(message.getBody(byte[].class));
            return true;
        } catch (RefusedInput still) {
            LOG.warn("Message still refused at {}", still.place());
            session.rollback();
            return false;
        }
    }
}
