package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.StrictErrorHandler;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.record.UnreadableRecord;

/** Reads the Bundle that a command is given: a file's name, or {@code -} for standard input. */
final class BundleInput {

    private BundleInput() {}

    static Bundle read(FhirContext fhir, String input) throws IOException {
        return bundle(fhir, text(input));
    }

    private static String text(String input) throws IOException {
        if (input.equals("-")) {
            return new String(System.in.readAllBytes(), StandardCharsets.UTF_8);
        }
        try {
            return Files.readString(Path.of(input));
        } catch (IOException unreadable) {
            throw new UnreadableRecord(IssueType.NOTFOUND, "Bundle", "The file " + input + " cannot be read as text.");
        }
    }

    private static Bundle bundle(FhirContext fhir, String text) {
        IBaseResource resource;
        try {
            resource = fhir.newJsonParser()
                    .setParserErrorHandler(new StrictErrorHandler())
                    .parseResource(text);
        } catch (DataFormatException notFhir) {
            throw new UnreadableRecord(IssueType.STRUCTURE, "Bundle", "Not FHIR R4 JSON: " + notFhir.getMessage());
        }
        if (resource instanceof Bundle bundle) {
            return bundle;
        }
        throw new UnreadableRecord(
                IssueType.STRUCTURE, resource.fhirType(), "Expected a Bundle, read a " + resource.fhirType() + ".");
    }
}
