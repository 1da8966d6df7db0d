package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.hl7.fhir.r4.model.Bundle;
import org.jspecify.annotations.Nullable;
import org.lensward.flow.OutcomePolicyFile;
import org.lensward.flow.PolicyFile;
import org.lensward.flow.RecordClient;
import org.lensward.outcome.OutcomePolicy;
import org.lensward.plan.Policy;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.outcome.OutcomeReading;
import org.lensward.record.outcome.OutcomeReports;
import org.lensward.record.outcome.OutcomeStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** How operated eyes then saw, and what that teaches. */
@Command(
        name = "outcomes",
        mixinStandardHelpOptions = true,
        subcommands = AdoptCommand.class,
        description = {
            "Compares what operated eyes were foretold with what they reached: by formula, length, lens, method and surgeon; what was left out"
                    + " and why; constants that the eyes suggest; ruptured capsules against what was expected.",
            "Reads files of a bulk export (NDJSON) or Bundles, of any size, or a running record (--record). Prints no patient data.",
            "Exit 0: eyes counted. 3: no eye counts. 2: the input cannot be read."
        })
final class OutcomesCommand implements Callable<Integer> {

    static final int COUNTED = 0;
    static final int NONE_COUNTS = 3;

    @Spec
    private @Nullable CommandSpec command;

    @Parameters(
            arity = "0..*",
            paramLabel = "FILE",
            description = "NDJSON or Bundles, together one export, in any order")
    private List<Path> files = List.of();

    @Option(names = "--record", paramLabel = "URL", description = "base address of a FHIR R4 record, read page by page")
    private @Nullable URI record;

    @Option(
            names = "--json",
            description = "print the reports as FHIR (a transaction of MeasureReports) in place of words")
    private boolean json;

    @Option(
            names = "--write",
            description = "write the MeasureReports into the record of --record; written twice, they stand once")
    private boolean write;

    @Option(
            names = "--reporter",
            paramLabel = "WHO",
            description = "who answers for the reports: Organization/..., or a name")
    private String reporter = "Lensward";

    @Option(names = "--policy", paramLabel = "FILE", description = "the hospital's policy; the shipped one if absent")
    private @Nullable Path policy;

    @Option(
            names = "--outcome-policy",
            paramLabel = "FILE",
            description = "the hospital's outcome policy; the shipped one if absent")
    private @Nullable Path outcomePolicy;

    @Override
    public Integer call() throws IOException {
        FhirContext fhir = Fhir.r4();
        IParser printer = fhir.newJsonParser().setPrettyPrint(true);
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        try (OutcomeReading reading = reading(fhir, files, record)) {
            OutcomeStudy study = study(reading);
            boolean prints = json || write && record == null;
            (prints ? System.err : out).print(OutcomeText.of(study));
            if (json || write) {
                report(study, fhir, printer, out);
            }
            return study.audit().counted() > 0 ? COUNTED : NONE_COUNTS;
        } catch (UnreadableRecord refused) {
            return UnreadableInput.tell(refused, printer, out);
        }
    }

    /** The study of these eyes by the policies that were named. */
    OutcomeStudy study(OutcomeReading reading) throws IOException {
        OutcomePolicy chosen = OutcomePolicyFile.orShipped(outcomePolicy);
        return OutcomeStudy.of(reading, chosen, reading.catalogue());
    }

    /** Files, or the record where one is named. */
    OutcomeReading reading(FhirContext fhir, List<Path> named, @Nullable URI url) throws IOException {
        if (named.isEmpty() == (url == null) && command != null) {
            throw new ParameterException(command.commandLine(), "Name files or a record, one of the two");
        }
        Policy chosen = PolicyFile.orShipped(policy);
        return url == null
                ? OutcomeReading.ofFiles(fhir, chosen.biometry(), named)
                : OutcomeReading.ofRecord(fhir, chosen.biometry(), RecordClient.at(url, fhir)::each);
    }

    private void report(OutcomeStudy study, FhirContext fhir, IParser printer, PrintStream out) {
        Optional<OutcomeReports.Span> span = study.period()
                .map(each -> new OutcomeReports.Span(
                        each.from(),
                        each.to(),
                        reporter,
                        Clock.system(ZoneId.systemDefault()).instant()));
        if (span.isEmpty()) {
            return;
        }
        Optional<RecordClient> client = Optional.ofNullable(record).map(url -> RecordClient.at(url, fhir));
        Shelf standing = new Shelf(client.map(each -> each.gather(OutcomeReports.questions(study, span.get())))
                .orElseGet(Bundle::new));
        Bundle reports = OutcomeReports.transaction(study, span.get(), standing);
        if (json || client.isEmpty()) {
            out.println(printer.encodeResourceToString(reports));
        }
        if (write && client.isPresent()) {
            written(client.get(), reports, json ? System.err : out);
        }
    }

    private static void written(RecordClient client, Bundle reports, PrintStream out) {
        if (!reports.hasEntry()) {
            out.println("Written: nothing new.");
        } else if (client.transact(reports).isPresent()) {
            out.println("Written: " + (reports.getEntry().size() - 1) + " MeasureReports.");
        } else {
            out.println("Not written: the reports were changed meanwhile; run it again.");
        }
    }
}
