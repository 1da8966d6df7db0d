package org.lensward.flow.log;

import java.util.Optional;
import org.apache.camel.CamelContext;
import org.apache.camel.Exchange;
import org.apache.camel.NamedNode;
import org.apache.camel.Route;
import org.apache.camel.spi.RoutePolicy;
import org.apache.camel.spi.RoutePolicyFactory;
import org.apache.camel.support.RoutePolicySupport;
import org.slf4j.MDC;

/**
 * Whatever is logged on a booking's way through the routes says which booking, as {@code booking} of the logging context. The routes work
 * on the thread that took the message, from beginning to end.
 */
public final class BookingTrail implements RoutePolicyFactory {

    private static final String BOOKING = "booking";
    private static final String KIND = "ServiceRequest/";

    @Override
    public RoutePolicy createRoutePolicy(CamelContext camel, String route, NamedNode definition) {
        return new RoutePolicySupport() {
            @Override
            public void onExchangeBegin(Route begun, Exchange exchange) {
                booking(exchange).ifPresent(name -> MDC.put(BOOKING, name));
            }

            @Override
            public void onExchangeDone(Route done, Exchange exchange) {
                if (done.getId().equals(exchange.getFromRouteId())) {
                    MDC.remove(BOOKING);
                }
            }
        };
    }

    /** The booking alone; the patient behind it stays out of the log. */
    private static Optional<String> booking(Exchange exchange) {
        return Optional.ofNullable(exchange.getMessage()
                        .getHeader(BOOKING, exchange.getMessage().getBody()))
                .filter(String.class::isInstance)
                .map(String.class::cast)
                .filter(text -> text.startsWith(KIND))
                .map(text -> text.split(" ", 2)[0]);
    }
}
