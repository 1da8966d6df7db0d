package org.lensward.flow;

import jakarta.jms.Connection;
import jakarta.jms.ConnectionFactory;
import jakarta.jms.JMSException;
import jakarta.jms.MessageProducer;
import jakarta.jms.Session;
import jakarta.jms.TextMessage;

/** Sessions with the broker for what people ask of it beside the routes; each is one transaction or several. */
final class BrokerSessions {

    /** A newer message of the same key takes the place of one that waits. */
    static final String KEY = "_AMQ_LVQ_NAME";

    private final ConnectionFactory connections;

    BrokerSessions(ConnectionFactory connections) {
        this.connections = connections;
    }

    /**
     * Work on the broker.
     *
     * @param <T> what it gives
     */
    @FunctionalInterface
    interface Work<T> {
        T in(Session session) throws JMSException;
    }

    /** What is not committed when the work ends is undone. */
    <T> T with(Work<T> work) {
        try (Connection connection = connections.createConnection();
                Session session = connection.createSession(true, Session.SESSION_TRANSACTED)) {
            connection.start();
            return work.in(session);
        } catch (JMSException failure) {
            throw new IllegalStateException("The broker refused: " + failure.getErrorCode(), failure);
        }
    }

    /** Queues a booking to be planned; counts once the session is committed. */
    static void queue(Session session, String booking) throws JMSException {
        try (MessageProducer producer = session.createProducer(session.createQueue("lensward.bookings"))) {
            TextMessage message = session.createTextMessage(booking);
            message.setStringProperty(KEY, booking);
            message.setStringProperty("JMSXGroupID", booking);
            producer.send(message);
        }
    }
}
