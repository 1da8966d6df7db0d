package org.lensward.board.flow;

import java.net.URI;
import java.time.Clock;
import java.util.Optional;
import org.apache.camel.CamelContext;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.DryRun;
import org.lensward.flow.FlowState;
import org.lensward.flow.ParkedBookings;
import org.lensward.plan.Policy;
import org.lensward.record.site.SiteCodes;
import org.springframework.boot.autoconfigure.web.ServerProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The Flow page and its calls. */
@Configuration(proxyBeanMethods = false)
@Import({FlowPage.class, FlowStateApi.class})
public class FlowPageConfiguration {

    @Bean
    FlowDesk.Installed installed(
            AdapterSettings settings, Policy policy, SiteCodes codes, CamelContext camel, ServerProperties server) {
        Optional<URI> own = Optional.ofNullable(server.getSsl())
                .filter(ssl -> ssl.isEnabled() && server.getPort() != null && server.getPort() > 0)
                .map(ssl -> URI.create("https://localhost:" + server.getPort()));
        return new FlowDesk.Installed(settings, policy, codes, camel, own);
    }

    @Bean
    FlowDesk flowDesk(
            FlowState state, ParkedBookings parked, DryRun dryRun, FlowDesk.Installed installed, Clock clock) {
        return new FlowDesk(state, parked, dryRun, installed, clock);
    }
}
