package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import java.nio.file.Path;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.PolicyFile;
import org.lensward.flow.SiteCodesFile;
import org.lensward.plan.Policy;
import org.lensward.record.site.SiteCodes;
import picocli.CommandLine.Option;

/** The hospital's own files, which every command that plans is given alike. */
final class HospitalFiles {

    @Option(names = "--policy", paramLabel = "FILE", description = "the hospital's policy; the shipped one if absent")
    private @Nullable Path policy;

    @Option(
            names = "--site-codes",
            paramLabel = "FILE",
            description = "the hospital's map of its own codes; none if absent")
    private @Nullable Path siteCodes;

    Policy policy() {
        return PolicyFile.orShipped(policy);
    }

    SiteCodes siteCodes() {
        return SiteCodesFile.orNone(siteCodes);
    }

    /** Planning as the hospital's adapter would do it. */
    BundlePlanning planning(FhirContext fhir, Clock clock) {
        return new BundlePlanning(fhir, policy(), siteCodes(), clock);
    }
}
