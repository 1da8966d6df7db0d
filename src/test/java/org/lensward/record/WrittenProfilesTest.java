package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Test;
import org.lensward.flow.PolicyFile;
import org.lensward.plan.EyePlan;
import org.lensward.plan.PlanState;
import org.lensward.plan.Planner;

/** The examples of what is read, read and planned: what is then written keeps the profiles of what is written. */
class WrittenProfilesTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final FhirContext FHIR = Fhir.r4();

    private final Bundle record = new Bundle().setType(Bundle.BundleType.COLLECTION);

    WrittenProfilesTest() {
        Patient patient =
                new Patient().setGender(AdministrativeGender.FEMALE).setBirthDateElement(new DateType("1949-04-17"));
        patient.setId("Patient/wren-71");
        patient.addIdentifier().setSystem("urn:oid:2.25.123456789").setValue("704-1182");
        Stream.of("axial-length", "keratometry", "anterior-chamber-depth")
                .forEach(name -> add(ProfileArtefacts.example(name), name));
        add(patient, "wren-71");
        add(ProfileArtefacts.example("intraocular-lens-model"), "harbour-60");
    }

    @Test
    void a_plan_with_a_lens_keeps_the_profiles() {
        add(ProfileArtefacts.example("booking"), "b-204");

        assertThat(assertKept(PlanState.PROVISIONAL))
                .extracting(ProfileArtefacts::declared)
                .map(url -> url.replaceAll(".*/", ""))
                .contains(
                        "eye-plan",
                        "lens-request",
                        "predicted-refraction",
                        "capsule-rupture-risk",
                        "finding",
                        "lens-check",
                        "plan-provenance");
    }

    @Test
    void a_withheld_plan_keeps_the_profiles() {
        ServiceRequest booking = (ServiceRequest) ProfileArtefacts.example("booking");
        booking.getBodySite().clear();
        add(booking, "b-204");

        assertKept(PlanState.WITHHELD);
    }

    private List<Resource> assertKept(PlanState state) {
        Shelf shelf = new Shelf(record);
        BookedCase booked = new CaseReader(FHIR, PolicyFile.shipped().biometry())
                .readAll(shelf, TODAY)
                .get(0);
        EyePlan plan = new Planner(PolicyFile.shipped()).plan(booked.planning());
        assertThat(plan.state()).isEqualTo(state);

        Publication.Write write = (Publication.Write)
                new PlanTransaction(shelf, Instant.parse("2026-11-25T07:30:00Z")).publish(booked, plan);
        List<Resource> written = write.bundle().getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .toList();
        assertThat(written).hasSizeGreaterThan(2).allSatisfy(each -> {
            assertThat(ProfileValidator.errors(each)).as(Shelf.name(each)).isEmpty();
            assertThat(ReferenceTargets.misdirected(each)).as(Shelf.name(each)).isEmpty();
        });
        return written;
    }

    private void add(Resource resource, String id) {
        resource.setId(resource.fhirType() + "/" + id);
        resource.getMeta().setVersionId("1");
        record.addEntry().setResource(resource);
    }
}
