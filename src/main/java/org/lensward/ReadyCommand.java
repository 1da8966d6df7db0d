package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import java.net.URI;
import java.util.concurrent.Callable;
import org.lensward.flow.Readiness;
import org.lensward.flow.RecordClient;
import org.lensward.record.Fhir;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Whether a server says that it can do what Lensward needs of the record. */
@Command(
        name = "ready",
        mixinStandardHelpOptions = true,
        description = {
            "Reads the server's CapabilityStatement and says what Lensward needs and it does not offer. Writes nothing.",
            "Exit 0: nothing indispensable is missing. 3: something is."
        })
final class ReadyCommand implements Callable<Integer> {

    private static final int NOT_READY = 3;

    @Option(names = "--record", paramLabel = "URL", required = true, description = "base address of a FHIR R4 record")
    private URI record = URI.create("");

    @Override
    public Integer call() {
        FhirContext fhir = Fhir.r4();
        Readiness readiness = Readiness.of(fhir, RecordClient.at(record, fhir).capabilities());
        readiness.missing().forEach(System.out::println);
        System.out.println(readiness.mayRun() ? "ready" : "not ready");
        return readiness.mayRun() ? 0 : NOT_READY;
    }
}
