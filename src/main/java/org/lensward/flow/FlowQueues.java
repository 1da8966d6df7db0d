package org.lensward.flow;

import jakarta.jms.ConnectionFactory;
import jakarta.jms.DeliveryMode;
import jakarta.jms.JMSException;
import jakarta.jms.MessageProducer;
import jakarta.jms.Session;
import jakarta.jms.TextMessage;

/** What people and other systems ask of the flow: to look at the record now, and to plan one booking again. */
public final class FlowQueues {

    /** A bell that is answered however short ago the last look was. */
    private static final String NOW = "now";

    private final BrokerSessions broker;
    private final RecordClient record;

    FlowQueues(ConnectionFactory connections, RecordClient record) {
        this.broker = new BrokerSessions(connections);
        this.record = record;
    }

    /**
     * Queues one booking to be planned again; a plan that holds is left as it is.
     *
     * @param booking such as {@code ServiceRequest/b1}
     */
    public void replan(String booking) {
        String name = BookingName.in(record, booking).toString();
        broker.with(session -> {
            BrokerSessions.queue(session, name);
            session.commit();
            return name;
        });
    }

    /** Has the watcher look at once. Many calls while it has not yet looked are one. */
    public void lookNow() {
        broker.with(FlowQueues::ring);
    }

    private static String ring(Session session) throws JMSException {
        try (MessageProducer producer = session.createProducer(session.createQueue("lensward.look"))) {
            producer.setDeliveryMode(DeliveryMode.NON_PERSISTENT);
            TextMessage bell = session.createTextMessage(NOW);
            bell.setStringProperty(BrokerSessions.KEY, NOW);
            producer.send(bell);
        }
        session.commit();
        return NOW;
    }
}
