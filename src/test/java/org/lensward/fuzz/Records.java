package org.lensward.fuzz;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;

/** The records that are spoiled: every folder of demo-data. */
record Records(List<String> names, List<String> texts, List<Bundle> bundles) {

    static Records read(FhirContext fhir) {
        try (Stream<Path> folders = Files.list(Path.of("demo-data"))) {
            List<Path> files = folders.map(folder -> folder.resolve("in.json"))
                    .filter(Files::exists)
                    .sorted()
                    .toList();
            List<String> texts = new ArrayList<>();
            for (Path file : files) {
                texts.add(Files.readString(file));
            }
            return new Records(
                    files.stream()
                            .map(file -> file.getName(file.getNameCount() - 2).toString())
                            .toList(),
                    texts,
                    texts.stream().map(text -> numbered(fhir, text)).toList());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** With a version for each resource, as every server gives it. */
    private static Bundle numbered(FhirContext fhir, String text) {
        Bundle record = fhir.newJsonParser().parseResource(Bundle.class, text);
        record.getEntry().forEach(entry -> entry.getResource().getMeta().setVersionId("1"));
        return record;
    }

    /** One of a list. */
    static <T> T any(List<T> all, SplittableRandom random) {
        return all.get(random.nextInt(all.size()));
    }

    /** The same record with one resource changed; all others are shared. */
    static <T extends Resource> Bundle with(Bundle record, T resource, Consumer<T> change) {
        @SuppressWarnings("unchecked")
        T copy = (T) resource.copy();
        copy.getMeta().setVersionId("2");
        change.accept(copy);
        Bundle changed = new Bundle().setType(record.getType());
        record.getEntry().forEach(entry -> changed.addEntry()
                .setResource(entry.getResource() == resource ? copy : entry.getResource()));
        return changed;
    }
}
