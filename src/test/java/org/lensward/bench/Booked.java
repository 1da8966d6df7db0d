package org.lensward.bench;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.flow.PolicyFile;
import org.lensward.plan.Planner;
import org.lensward.plan.PlanningCase;
import org.lensward.plan.Policy;
import org.lensward.record.BookedCase;
import org.lensward.record.CaseReader;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The demo's toric eye as it was read from the record, and the planner with the shipped policy. */
@State(Scope.Thread)
public class Booked {

    private static final Path STORY = Path.of("demo-data/astigmatism-worth-a-toric-lens/in.json");

    final Planner planner;
    final PlanningCase planning;

    public Booked() {
        FhirContext fhir = Fhir.r4();
        Policy policy = PolicyFile.shipped();
        Bundle bundle = fhir.newJsonParser().parseResource(Bundle.class, story());
        List<BookedCase> read =
                new CaseReader(fhir, policy.biometry()).readAll(new Shelf(bundle), LocalDate.of(2026, 12, 1));
        planner = new Planner(policy);
        planning = read.get(0).planning();
    }

    private static String story() {
        try {
            return Files.readString(STORY);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("Run from the project's folder", unreadable);
        }
    }
}
