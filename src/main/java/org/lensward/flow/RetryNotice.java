package org.lensward.flow;

import org.apache.camel.Exchange;
import org.apache.camel.Processor;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Says that a booking is tried again, and after what kind of failure; a server's own words may hold patient data and stay unsaid. */
public final class RetryNotice implements Processor {

    private static final Logger LOG = LoggerFactory.getLogger(RetryNotice.class);

    @Override
    public void process(Exchange exchange) {
        String booking = BookingName.parse(exchange.getMessage().getHeader("booking", String.class))
                .booking();
        Integer attempt = exchange.getMessage().getHeader(Exchange.REDELIVERY_COUNTER, Integer.class);
        Exception failure = exchange.getProperty(Exchange.EXCEPTION_CAUGHT, Exception.class);
        LOG.warn(
                "{} tried again ({}) after {}",
                booking,
                attempt,
                failure.getClass().getSimpleName());
    }
}
