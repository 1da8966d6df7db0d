package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.concurrent.Callable;
import org.hl7.fhir.r4.model.Bundle;
import org.jspecify.annotations.Nullable;
import org.lensward.board.api.Bookings;
import org.lensward.flow.BookingName;
import org.lensward.flow.BookingPlanning;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.Gatherer;
import org.lensward.flow.PolicyFile;
import org.lensward.flow.RecordClient;
import org.lensward.flow.SiteCodesFile;
import org.lensward.flow.WouldWrite;
import org.lensward.record.Fhir;
import org.lensward.record.Publication;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteSearch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plans one booking of a running record again. */
@Command(
        name = "replan",
        mixinStandardHelpOptions = true,
        description = {
            "Gathers one booking from the record, plans it and writes the plan; a plan that still holds is left as it is.",
            "Prints resources and the elements that change, no patient data. Exit 0: done. 2: there is no such booking."
        })
final class ReplanCommand implements Callable<Integer> {

    private static final int UNREADABLE = 2;

    @Parameters(paramLabel = "BOOKING", description = "id of the ServiceRequest")
    private String booking = "";

    @Option(names = "--record", paramLabel = "URL", required = true, description = "base address of a FHIR R4 record")
    private URI record = URI.create("");

    @Option(names = "--dry-run", description = "say what would be written and write nothing")
    private boolean dryRun;

    @Option(names = "--policy", paramLabel = "FILE", description = "the hospital's policy; the shipped one if absent")
    private @Nullable Path policy;

    @Option(names = "--site-codes", paramLabel = "FILE", description = "the hospital's map of its own codes")
    private @Nullable Path siteCodes;

    @Override
    public Integer call() {
        FhirContext fhir = Fhir.r4();
        SiteCodes codes = SiteCodesFile.orNone(siteCodes);
        Clock clock = Clock.system(ZoneOffset.UTC);
        RecordClient client = RecordClient.at(record, fhir);
        try {
            String name = BookingName.in(client, Bookings.name(booking)).toString();
            Bundle gathered = new Gatherer(client, new SiteSearch(codes)).gather(name);
            BundlePlanning planning = new BundlePlanning(fhir, PolicyFile.orShipped(policy), codes, clock);
            Publication publication = new BookingPlanning(planning).plan(gathered, name);
            if (publication instanceof Publication.Write write) {
                System.out.println(WouldWrite.of(name, clock.instant(), write.bundle(), gathered));
                if (!dryRun) {
                    client.post(write.bundle());
                }
                System.out.println(dryRun ? "dry run: nothing written" : "written");
            } else {
                System.out.println("nothing to write");
            }
            return 0;
        } catch (UnreadableRecord refused) {
            System.err.println(refused.getMessage());
            return UNREADABLE;
        }
    }
}
