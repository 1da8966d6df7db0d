package org.lensward.record.outcome;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.eye.BiometryPolicy;
import org.lensward.lens.Catalogue;
import org.lensward.outcome.OperatedEye;
import org.lensward.outcome.OperatedEyes;
import org.lensward.record.CatalogueReader;
import org.lensward.record.Evidences;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;

/**
 * The operated eyes of an export or a record of any size. It is read once; what concerns one person is brought together on disk; person
 * by person it is read as planning reads it; the eyes are kept on disk and can be gone through again and again. Memory holds one run of
 * the sorting, and {@link #TOGETHER} persons, however many there are.
 */
public final class OutcomeReading implements AutoCloseable {

    /** Persons read at once, side by side. */
    private static final int TOGETHER = 256;

    private static final String OPERATION = "\"resourceType\":\"Procedure\"";

    private final FhirContext fhir;
    private final OperatedEyeReader reader;
    private final EyeRows rows;
    private final UnusedCounts unused = new UnusedCounts();
    private final List<Person> waiting = new ArrayList<>();
    private final RuptureDays days;
    private Optional<Period> period = Optional.empty();
    private Catalogue catalogue = new Catalogue(List.of());

    private OutcomeReading(FhirContext fhir, BiometryPolicy policy, EyeRows rows, RuptureDays days) {
        this.fhir = fhir;
        this.reader = new OperatedEyeReader(fhir, policy);
        this.rows = rows;
        this.days = days;
    }

    /**
     * Files of a bulk export (NDJSON) or Bundles, together one export, in any order.
     *
     * @throws UnreadableRecord where one is not there or not FHIR, with the line
     */
    public static OutcomeReading ofFiles(FhirContext fhir, BiometryPolicy policy, List<Path> files) throws IOException {
        return of(fhir, policy, spool -> {
            for (Path file : files) {
                if (!Files.isReadable(file) || Files.isDirectory(file)) {
                    throw new UnreadableRecord(IssueType.NOTFOUND, file.toString(), "This file cannot be read.");
                }
                try (Reader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                    ResourceLines.read(text, file.getFileName().toString(), spool::take);
                }
            }
        });
    }

    /** A record, page by page as it is handed over. */
    public static OutcomeReading ofRecord(FhirContext fhir, BiometryPolicy policy, Pages pages) throws IOException {
        return of(fhir, policy, spool -> {
            for (String question : QUESTIONS) {
                pages.each(question, resource -> take(spool, fhir, resource));
            }
        });
    }

    /** What to ask a record for; every one of them is gone through page by page. */
    public static final List<String> QUESTIONS = List.of(
            "Procedure?status=completed&_count=500",
            "Observation?_count=500",
            "DeviceDefinition?_count=500",
            "Device?type=https://lensward.org/fhir/CodeSystem/device-type|intraocular-lens&_count=500",
            "DeviceRequest?_count=500",
            "DeviceUseStatement?_count=500",
            "RiskAssessment?_count=500",
            "Condition?_count=500",
            "AdverseEvent?_count=500",
            "BodyStructure?_count=500",
            "Provenance?_count=500");

    private static void take(PatientSpool spool, FhirContext fhir, Resource resource) {
        try {
            String json = fhir.newJsonParser().encodeResourceToString(resource);
            ResourceLines.read(new StringReader(json), Shelf.name(resource), spool::take);
        } catch (IOException full) {
            throw new UncheckedIOException(full);
        }
    }

    private static OutcomeReading of(FhirContext fhir, BiometryPolicy policy, Source source) throws IOException {
        OutcomeReading reading = new OutcomeReading(fhir, policy, EyeRows.open(), RuptureDays.open());
        try (PatientSpool spool = PatientSpool.open(SortedSpool.RUN)) {
            source.into(spool);
            reading.catalogue = reading.catalogue(spool.models());
            spool.forEachPatient(reading::person);
            reading.flush();
            reading.rows.written();
            return reading;
        } catch (IOException | RuntimeException failed) {
            reading.close();
            throw failed;
        }
    }

    private void person(String key, List<String> resources) throws IOException {
        if (resources.stream().anyMatch(each -> each.contains(OPERATION))) {
            waiting.add(new Person(key, resources));
        }
        if (waiting.size() >= TOGETHER) {
            flush();
        }
    }

    private void flush() throws IOException {
        List<PersonsEyes> read = waiting.parallelStream().map(this::read).toList();
        waiting.clear();
        for (PersonsEyes each : read) {
            rows.write(each.eyes());
            days.add(each.eyes());
            each.eyes().forEach(this::extend);
            each.unused().forEach(unused::add);
        }
    }

    private PersonsEyes read(Person person) {
        var parser = fhir.newJsonParser();
        Bundle all = new Bundle();
        for (String resource : person.resources()) {
            IBaseResource parsed = parser.parseResource(resource);
            all.addEntry().setResource((Resource) parsed);
        }
        return reader.read(new Shelf(all), person.key());
    }

    /** The eyes, each operation that left a lens one. */
    public OperatedEyes eyes() {
        return rows;
    }

    private void extend(OperatedEye eye) {
        LocalDate day = eye.operatedOn();
        period = period.map(span -> new Period(
                        day.isBefore(span.from()) ? day : span.from(), day.isAfter(span.to()) ? day : span.to()))
                .or(() -> Optional.of(new Period(day, day)));
    }

    /** Between which days the operations lie; empty where there is none. */
    public Optional<Period> period() {
        return period;
    }

    /**
     * A time, both days in it.
     *
     * @param from first day
     * @param to last day
     */
    public record Period(LocalDate from, LocalDate to) {}

    /** The lens models that came with them. */
    public Catalogue catalogue() {
        return catalogue;
    }

    private Catalogue catalogue(List<String> models) {
        Bundle all = new Bundle();
        models.forEach(each ->
                all.addEntry().setResource((Resource) fhir.newJsonParser().parseResource(each)));
        return new CatalogueReader(new Evidences(fhir)).read(new Shelf(all));
    }

    /** The operations in the order of their days. */
    RuptureDays days() {
        return days;
    }

    /** How many there are. */
    public long count() {
        return rows.eyes();
    }

    /** What could not be used. */
    public UnusedCounts unused() {
        return unused;
    }

    @Override
    public void close() throws IOException {
        rows.close();
        days.close();
    }

    /** Goes through everything a search finds, page by page, without keeping it. */
    public interface Pages {
        void each(String question, Consumer<Resource> taker);
    }

    private interface Source {
        void into(PatientSpool spool) throws IOException;
    }

    private record Person(String key, List<String> resources) {}
}
