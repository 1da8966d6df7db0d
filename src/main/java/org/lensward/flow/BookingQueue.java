package org.lensward.flow;

import org.apache.activemq.artemis.api.core.SimpleString;
import org.apache.activemq.artemis.core.config.Configuration;
import org.apache.activemq.artemis.core.settings.impl.AddressSettings;
import org.springframework.boot.autoconfigure.jms.artemis.ArtemisConfigurationCustomizer;

/** The embedded broker's queues: bookings to plan, those that could not be, and messages set aside. Each holds a thing at most once. */
final class BookingQueue implements ArtemisConfigurationCustomizer {

    private static final String BOOKINGS = "lensward.bookings";
    private static final SimpleString PARKED = SimpleString.of("lensward.parked");

    /** A thing set aside is taken up as often as a person likes; the broker would drop it after ten times. */
    private static final int WITHOUT_END = -1;

    @Override
    public void customize(Configuration broker) {
        broker.setJMXManagementEnabled(false);
        broker.setJournalLockAcquisitionTimeout(5_000);
        broker.addAddressSetting(BOOKINGS, lastValue().setDeadLetterAddress(PARKED));
        broker.addAddressSetting("lensward.parked", lastValue().setMaxDeliveryAttempts(WITHOUT_END));
        broker.addAddressSetting("lensward.quarantine", lastValue().setMaxDeliveryAttempts(WITHOUT_END));
    }

    /** A window of none: what waits stays in the broker, where a newer message can still take its place. */
    private static AddressSettings lastValue() {
        return new AddressSettings().setDefaultLastValueQueue(true).setDefaultConsumerWindowSize(0);
    }
}
