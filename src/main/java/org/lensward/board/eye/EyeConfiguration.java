package org.lensward.board.eye;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import org.lensward.board.api.Bookings;
import org.lensward.flow.BundlePlanning;
import org.lensward.plan.Policy;
import org.lensward.record.check.LensChecks;
import org.lensward.record.site.SiteCodes;
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
