package org.lensward.record;

import ca.uhn.fhir.context.FhirContext;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.Consumer;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestIntent;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.eye.Policies;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.plan.EyePlan;
import org.lensward.plan.Planner;
import org.lensward.plan.PlanningCase;
import org.lensward.plan.WholePolicy;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteTranslation;
import org.lensward.record.site.SiteTranslation.Translated;

/** A small record for tests, changed step by step; every resource in its first version as a server would number it. */
final class Bundles {

    static final FhirContext FHIR = Fhir.r4();
    static final LocalDate TODAY = LocalDate.of(2026, 3, 2);
    static final String OPERATION = "2026-03-16";
    static final Reference PATIENT = new Reference("Patient/p1");

    private final Map<String, Resource> resources = new LinkedHashMap<>();

    /** A patient and a booking for the right eye, lenses for every site, nothing measured. */
    static Bundles booked() {
        Bundles record = new Bundles();
        record.add(patient()).add(booking());
        return record.add(LensDefinitions.bag()).add(LensDefinitions.sulcus()).add(LensDefinitions.anteriorChamber());
    }

    /** The same with both eyes measured: the plan is ready. */
    static Bundles ordinary(Shape shape) {
        Bundles record = booked();
        shape.measured("right", "1290032005", 23.50).forEach(record::add);
        shape.measured("left", "1290031003", 23.45).forEach(record::add);
        return record;
    }

    static Bundles ordinary() {
        return ordinary(Shape.FLAT);
    }

    private static Patient patient() {
        Patient patient =
                new Patient().setGender(AdministrativeGender.FEMALE).setBirthDateElement(new DateType("1960-01-31"));
        patient.addIdentifier().setSystem("urn:oid:2.25.123456789").setValue("704-1182");
        patient.addName().setFamily("Specimen").addGiven("Ada");
        patient.setId("p1");
        return patient;
    }

    private static ServiceRequest booking() {
        ServiceRequest booking = new ServiceRequest()
                .setStatus(ServiceRequestStatus.ACTIVE)
                .setIntent(ServiceRequestIntent.ORDER)
                .setCode(snomed("415089008"))
                .setSubject(PATIENT.copy())
                .setOccurrence(new DateTimeType(OPERATION));
        booking.addBodySite(snomed("1290032005"));
        booking.addExtension("https://lensward.org/fhir/StructureDefinition/target-refraction", dioptres("-0.25"));
        booking.setId("b1");
        return booking;
    }

    Bundles add(Resource resource) {
        if (!resource.getMeta().hasVersionId()) {
            resource.getMeta().setVersionId("1");
        }
        resources.put(resource.fhirType() + "/" + resource.getIdElement().getIdPart(), resource);
        return this;
    }

    Bundles remove(String name) {
        resources.remove(name);
        return this;
    }

    /** Changes a resource; the server would number a new version. */
    <T extends Resource> Bundles change(Class<T> type, String id, Consumer<T> change) {
        T resource = type.cast(named(type.getSimpleName() + "/" + id));
        change.accept(resource);
        int version = Integer.parseInt(resource.getMeta().getVersionId());
        resource.getMeta().setVersionId(String.valueOf(version + 1));
        return this;
    }

    Bundles booking(Consumer<ServiceRequest> change) {
        return change(ServiceRequest.class, "b1", change);
    }

    ServiceRequest request() {
        return (ServiceRequest) named("ServiceRequest/b1");
    }

    private Resource named(String name) {
        return Objects.requireNonNull(resources.get(name), name);
    }

    List<Resource> all() {
        return List.copyOf(resources.values());
    }

    /** As a server would answer: a copy, read from JSON. */
    Bundle bundle() {
        Bundle bundle = new Bundle().setType(Bundle.BundleType.COLLECTION);
        resources.values().forEach(each -> bundle.addEntry().setResource(each).setFullUrl(fullUrl(each)));
        return FHIR.newJsonParser()
                .parseResource(Bundle.class, FHIR.newJsonParser().encodeResourceToString(bundle));
    }

    private static String fullUrl(Resource resource) {
        String name = Shelf.name(resource);
        return name.startsWith("urn:") ? name : "https://record.example/fhir/" + name;
    }

    /** The same record in another order. */
    Bundles shuffled(long seed) {
        List<Resource> order = new ArrayList<>(resources.values());
        Collections.shuffle(order, new Random(seed));
        Bundles other = new Bundles();
        order.forEach(other::add);
        return other;
    }

    Shelf shelf() {
        return new Shelf(bundle());
    }

    List<BookedCase> cases() {
        return new CaseReader(FHIR, Policies.standard()).readAll(shelf(), TODAY);
    }

    /** As read through a hospital's code map. */
    PlanningCase through(SiteCodes codes) {
        Translated translated = new SiteTranslation(codes).translate(bundle());
        return new CaseReader(FHIR, Policies.standard())
                .readAll(new Shelf(translated.bundle()), TODAY, translated.doubts())
                .get(0)
                .planning();
    }

    BookedCase read() {
        return cases().get(0);
    }

    PlanningCase planning() {
        return read().planning();
    }

    List<Finding> found() {
        return planning().found();
    }

    List<FindingCode> codes() {
        return found().stream().map(Finding::code).toList();
    }

    EyePlan plan() {
        return new Planner(WholePolicy.standard()).plan(planning());
    }

    static CodeableConcept snomed(String code) {
        return coded("http://snomed.info/sct", code);
    }

    static CodeableConcept ours(String system, String code) {
        return coded("https://lensward.org/fhir/CodeSystem/" + system, code);
    }

    static CodeableConcept coded(String system, String code) {
        return new CodeableConcept(new Coding().setSystem(system).setCode(code));
    }

    static Quantity dioptres(String value) {
        return quantity(value, "[diop]");
    }

    static Quantity quantity(String value, String unit) {
        return new Quantity()
                .setValue(new BigDecimal(value))
                .setSystem("http://unitsofmeasure.org")
                .setCode(unit);
    }
}
