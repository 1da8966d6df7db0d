package org.lensward.board.outcome;

import ca.uhn.fhir.context.FhirContext;
import java.nio.file.Path;
import java.time.Clock;
import org.lensward.flow.OutcomePolicyFile;
import org.lensward.flow.RecordClient;
import org.lensward.outcome.OutcomePolicy;
import org.lensward.plan.Policy;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The outcomes page, and what reads the record for it. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(OutcomeSettings.class)
@Import(OutcomePage.class)
public class OutcomeConfiguration {

    @Bean
    OutcomeView outcomeView(
            FhirContext fhir, RecordClient client, Policy policy, OutcomeSettings settings, Clock clock) {
        OutcomePolicy outcomes = settings.policy().isBlank()
                ? OutcomePolicyFile.shipped()
                : OutcomePolicyFile.orShipped(Path.of(settings.policy()));
        return new OutcomeView(new OutcomeView.Reader(fhir, client, policy.biometry(), outcomes), settings, clock);
    }
}
