package org.lensward.record;

import java.io.IOException;
import java.nio.file.Files;
import org.lensward.Refusals;

/**
 * Writes anew what {@code fhir-profiles} holds of generated files: the examples of refusals and the
 * ImplementationGuide. To be run after an artefact, an example or a refusal was added or changed; {@code ProfilesGuideTest} and
 * {@code RefusalsTest} fail until it was.
 */
public final class PublishedFiles {

    private PublishedFiles() {}

    /** No arguments; run it in the project's folder. */
    public static void main(String... arguments) throws IOException {
        Refusals.write();
        Files.writeString(Guide.FILE, guide());
    }

    static String guide() {
        return ProfileArtefacts.FHIR
                        .newJsonParser()
                        .setPrettyPrint(true)
                        .encodeResourceToString(
                                Guide.of(ProfileArtefacts.artefactFiles(), ProfileArtefacts.exampleFiles()))
                + "\n";
    }
}
