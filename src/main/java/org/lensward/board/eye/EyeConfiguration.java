package org.lensward.board.eye;

import org.lensward.board.api.Bookings;
import org.lensward.flow.BundlePlanning;
import org.lensward.record.check.LensChecks;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The Eye page and the page that shows where a number stands in the record. */
@Configuration(proxyBeanMethods = false)
@Import({EyePage.class, EvidencePage.class})
public class EyeConfiguration {

    @Bean
    PlannedEyes plannedEyes(Bookings bookings, LensChecks checks, BundlePlanning planning) {
        return new PlannedEyes(bookings, checks, planning);
    }
}
