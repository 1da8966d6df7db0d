package org.lensward.board.check;

import org.lensward.board.api.Bookings;
import org.lensward.plan.Policy;
import org.lensward.record.check.LensChecks;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The Check page. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(CheckPageSettings.class)
@Import(CheckPage.class)
public class CheckConfiguration {

    @Bean
    StandingChecks standingChecks(Bookings bookings, LensChecks checks, Policy policy) {
        return new StandingChecks(bookings, checks, policy.check());
    }
}
