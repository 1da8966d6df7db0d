package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.finding.Finding;
import org.lensward.flow.BundlePlanning.Planned;
import org.lensward.plan.PlanState;
import org.lensward.record.Fhir;
import org.lensward.record.Publication;
import org.lensward.record.UnreadableRecord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Plans the bookings of one Bundle, with no server and no broker. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = {
            "Reads a FHIR R4 Bundle of bookings and their data; writes the transaction Bundle that would be posted to standard output"
                    + " and the findings to standard error.",
            "Exit 0: all planned. 3: at least one plan is withheld. 2: the input cannot be read (an OperationOutcome says why)."
        })
final class PlanCommand implements Callable<Integer> {

    static final int PLANNED = 0;
    static final int WITHHELD = 3;

    @Parameters(paramLabel = "BUNDLE.json", description = "the file to read, or - for standard input")
    private String input = "-";

    @Mixin
    private final HospitalFiles hospital = new HospitalFiles();

    @Override
    public Integer call() throws IOException {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        // Made here and not with the command: every other command makes this one too.
        FhirContext fhir = Fhir.r4();
        IParser json = fhir.newJsonParser().setPrettyPrint(true);
        try {
            List<Planned> planned = plan(fhir, BundleInput.read(fhir, input));
            planned.forEach(PlanCommand::report);
            out.println(json.encodeResourceToString(merged(planned)));
            boolean withheld = planned.stream().anyMatch(each -> each.plan().state() == PlanState.WITHHELD);
            return withheld ? WITHHELD : PLANNED;
        } catch (UnreadableRecord refused) {
            return UnreadableInput.tell(refused, json, out);
        }
    }

    private List<Planned> plan(FhirContext fhir, Bundle bundle) {
        List<Planned> planned =
                hospital.planning(fhir, Clock.system(ZoneId.systemDefault())).plan(bundle);
        if (planned.isEmpty()) {
            throw new UnreadableRecord(
                    IssueType.REQUIRED,
                    "Bundle.entry",
                    "There is no active booking of lens surgery (a ServiceRequest) in the Bundle.");
        }
        return planned;
    }

    private static void report(Planned planned) {
        System.err.println(planned.booked() + ": " + planned.plan().state().code());
        for (Finding finding : planned.plan().findings()) {
            System.err.printf(
                    "  %s %s: %s [%s] %s%n",
                    finding.severity().name().toLowerCase(Locale.ROOT),
                    finding.code().code(),
                    finding.message(),
                    finding.evidence().get(0),
                    finding.remedy());
        }
    }

    private static Bundle merged(List<Planned> planned) {
        Bundle all = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        planned.forEach(each -> {
            if (each.publication() instanceof Publication.Write write) {
                write.bundle().getEntry().forEach(all::addEntry);
            }
        });
        return all;
    }
}
