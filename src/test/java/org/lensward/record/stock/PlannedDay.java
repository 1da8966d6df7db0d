package org.lensward.record.stock;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.finding.Outcome;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.PolicyFile;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.record.Fhir;
import org.lensward.record.Publication;
import org.lensward.record.Shelf;
import org.lensward.record.bank.LensBank;

/** The demo's theatre day with its plans and its lens bank, changed step by step. */
final class PlannedDay {

    static final FhirContext FHIR = Fhir.r4();
    static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    static final LocalDate DAY = LocalDate.of(2026, 12, 10);
    static final StockPolicy POLICY = PolicyFile.shipped().stock();

    private static final Bundle PLANNED = planned();

    private final Bundle all = PLANNED.copy();

    private static Bundle planned() {
        Bundle day = new Bundle();
        try (Stream<Path> stories = Files.list(Path.of("demo-data"))) {
            stories.map(story -> story.resolve("in.json"))
                    .filter(Files::exists)
                    .sorted()
                    .flatMap(file -> parse(file).getEntry().stream())
                    .forEach(day::addEntry);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        Clock clock = Clock.fixed(TODAY.atStartOfDay().toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
        new BundlePlanning(FHIR, PolicyFile.shipped(), clock).plan(day).forEach(each -> ((Publication.Write)
                        each.publication())
                .bundle()
                .getEntry()
                .forEach(day::addEntry));
        parse(Path.of("demo-data/lens-bank.json")).getEntry().forEach(day::addEntry);
        return day;
    }

    private static Bundle parse(Path file) {
        try {
            return FHIR.newJsonParser().parseResource(Bundle.class, Files.readString(file));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** The same day with one resource changed. */
    <T extends Resource> PlannedDay change(Class<T> type, String id, Consumer<T> change) {
        change.accept(find(type, id));
        return this;
    }

    <T extends Resource> T find(Class<T> type, String id) {
        return shelf().all(type)
                .filter(each -> each.getIdElement().getIdPart().equals(id))
                .findFirst()
                .orElseThrow();
    }

    PlannedDay add(Resource resource) {
        all.addEntry().setResource(resource);
        return this;
    }

    Shelf shelf() {
        return new Shelf(all);
    }

    List<LensUnit> units() {
        Outcome<List<LensUnit>> read = LensBank.units(FHIR, shelf());
        if (!read.findings().isEmpty()) {
            throw new IllegalStateException(read.findings().toString());
        }
        return read.value().orElseThrow();
    }

    StockSheet sheet() {
        return sheet(POLICY);
    }

    StockSheet sheet(StockPolicy policy) {
        return sheet(policy, new StockSheet.Days(DAY, DAY, TODAY));
    }

    StockSheet sheet(StockPolicy policy, StockSheet.Days days) {
        return StockSheet.of(shelf(), units(), policy, days);
    }
}
