package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.jspecify.annotations.Nullable;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.RecordClient;
import org.lensward.flow.SiteCodesFile;
import org.lensward.record.Fhir;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.site.CodeSurvey;
import org.lensward.record.site.SiteCodes;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says which codes, units, body sites and identifiers of a record Lensward understands, and through what. */
@Command(
        name = "codes",
        mixinStandardHelpOptions = true,
        description = {
            "Counts the codes, units, body sites and identifier systems of a Bundle or a record: mapped, unmapped, ambiguous. Prints no"
                    + " patient data.",
            "Exit 0: everything that sits on a measurement of an eye is understood. 3: something is not. 2: the input cannot be read."
        })
final class CodesCommand implements Callable<Integer> {

    static final int ALL_UNDERSTOOD = 0;
    static final int NOT_UNDERSTOOD = 3;

    private static final List<String> QUESTIONS = Stream.of(
                    "Observation",
                    "Condition",
                    "Procedure",
                    "MedicationStatement",
                    "MedicationRequest",
                    "Medication",
                    "AllergyIntolerance",
                    "DeviceDefinition",
                    "ServiceRequest",
                    "BodyStructure",
                    "Patient")
            .map(type -> type + "?_count=500")
            .toList();

    @ArgGroup(multiplicity = "1")
    private Source source = new Source();

    /** Where to read: a file or a server. */
    static final class Source {
        @Parameters(paramLabel = "BUNDLE.json", description = "the file to read, or - for standard input")
        private @Nullable String input;

        @Option(names = "--record", paramLabel = "URL", description = "base address of a FHIR R4 server to read whole")
        private @Nullable URI record;
    }

    @Option(
            names = "--site-codes",
            paramLabel = "FILE",
            description = "the hospital's map of its own codes; none if absent")
    private @Nullable Path siteCodes;

    @Override
    public Integer call() throws IOException {
        FhirContext fhir = Fhir.r4();
        SiteCodes codes = SiteCodesFile.orNone(siteCodes);
        try {
            CodeSurvey survey = CodeSurvey.of(bundle(fhir), codes);
            new PrintStream(System.out, true, StandardCharsets.UTF_8).println(CodesTable.of(survey));
            return survey.allUnderstoodOnEyes() ? ALL_UNDERSTOOD : NOT_UNDERSTOOD;
        } catch (UnreadableRecord refused) {
            return UnreadableInput.tell(refused);
        }
    }

    private Bundle bundle(FhirContext fhir) throws IOException {
        if (source.record != null) {
            return new RecordClient(fhir, new AdapterSettings.RecordServer(source.record, Duration.ofMinutes(2)))
                    .gather(QUESTIONS);
        }
        return BundleInput.read(fhir, source.input == null ? "-" : source.input);
    }
}
