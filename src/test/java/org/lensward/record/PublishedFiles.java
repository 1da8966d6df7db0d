package org.lensward.record;

import java.io.IOException;
import java.nio.file.Files;

/**
 * Writes anew what {@code fhir-profiles} holds of generated files: the ImplementationGuide. To be run after an artefact or example was
 * added; {@link ProfilesGuideTest} fails until it was.
 */
public final class PublishedFiles {

    private PublishedFiles() {}

    /** No arguments; run it in the project's folder. */
    public static void main(String... arguments) throws IOException {
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
