package org.lensward.flow;

import org.apache.activemq.artemis.api.core.SimpleString;
import org.apache.activemq.artemis.core.config.Configuration;
import org.apache.activemq.artemis.core.settings.impl.AddressSettings;
import org.springframework.boot.autoconfigure.jms.artemis.ArtemisConfigurationCustomizer;

/**
 * The embedded broker's queues: bookings to plan, those that could not be, messages set aside, and the bell that wakes the watcher. Each
 * holds a thing at most once. A broker of the hospital's own is told the same by {@code src/main/packaging/broker-address-settings.xml}.
 */
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
        broker.addAddressSetting("lensward.look", lastValue().setDefaultExclusiveQueue(true));
        broker.addAddressSetting("lensward.parked", lastValue().setMaxDeliveryAttempts(WITHOUT_END));
        broker.addAddressSetting("lensward.quarantine", lastValue().setMaxDeliveryAttempts(WITHOUT_END));
    }

    /** A window of none: what waits stays in the broker, where a newer message can still take its place. */
    private static AddressSettings lastValue() {
        return new AddressSettings().setDefaultLastValueQueue(true).setDefaultConsumerWindowSize(0);
    }
}
