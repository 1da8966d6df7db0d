package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.hl7.fhir.r4.model.AllergyIntolerance;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.lensward.check.Attempt;
import org.lensward.check.BackUp;
import org.lensward.check.Carton;
import org.lensward.check.CheckedLens;
import org.lensward.check.Checkpoint;
import org.lensward.check.Checks;
import org.lensward.check.Expected;
import org.lensward.check.Presented;
import org.lensward.plan.WholePolicy;
import org.lensward.quantity.Dioptres;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;
import org.lensward.record.check.StoredCheck;

/** A small record with one planned booking, on the day of the operation; it takes a transaction only in the versions that were read. */
final class CheckedRecord {

    static final String BOOKING = "ServiceRequest/b1";
    static final String SURGEON = "Practitioner/surgeon-1";

    final Bundles record;

    final LensChecks checks = new LensChecks(
            Bundles.FHIR,
            WholePolicy.standard(),
            Checks.policy(),
            Clock.fixed(Instant.parse("2026-03-16T09:40:00Z"), ZoneOffset.UTC));

    private CheckedRecord(Bundles record) {
        this.record = record;
    }

    /** A patient with two identifiers and an allergy, second on the list, planned. */
    static CheckedRecord planned() {
        return planned(Bundles.ordinary());
    }

    static CheckedRecord planned(Bundles record) {
        record.change(Patient.class, "p1", each -> each.addIdentifier()
                .setSystem("urn:oid:2.25.987654321")
                .setValue("998 112"));
        AllergyIntolerance allergy = new AllergyIntolerance(Bundles.PATIENT.copy());
        allergy.setCode(new CodeableConcept().setText("Penicillin")).setId("a1");
        record.add(allergy);
        record.add(appointment("first", "2026-03-16T08:30:00+01:00"));
        record.add(appointment("own", "2026-03-16T09:30:00+01:00").addBasedOn(new Reference(BOOKING)));
        return new CheckedRecord(Publishing.published(record));
    }

    static Appointment appointment(String id, String start) {
        Appointment appointment =
                new Appointment().setStatus(AppointmentStatus.BOOKED).setStartElement(new InstantType(start));
        appointment.addParticipant().setActor(new Reference("Location/theatre-1"));
        appointment.setId(id);
        return appointment;
    }

    static CheckedRecord confirmed() {
        return planned().confirm();
    }

    CheckedRecord confirm() {
        post(checks.confirm(record.bundle(), BOOKING, SURGEON));
        return this;
    }

    static CheckedRecord upTo(Checkpoint last) {
        CheckedRecord record = confirmed();
        for (Checkpoint at : Checkpoint.values()) {
            record.post(record.present(at));
            if (at == last) {
                break;
            }
        }
        return record;
    }

    CheckAnswer present(Checkpoint at) {
        return present(at, UnaryOperator.identity());
    }

    CheckAnswer present(Checkpoint at, UnaryOperator<Presented> spoil) {
        return checks.present(record.bundle(), BOOKING, new Attempt(at, spoil.apply(right(at))));
    }

    Presented right(Checkpoint at) {
        return Checks.right(at, check().expected());
    }

    /** Takes what is to be written, as a server would: nothing else, and only over the version that was read. */
    CheckAnswer.Write post(CheckAnswer answer) {
        assertThat(answer).isInstanceOf(CheckAnswer.Write.class);
        CheckAnswer.Write write = (CheckAnswer.Write) answer;
        for (BundleEntryComponent entry : write.transaction().getEntry()) {
            String name = entry.getRequest().getUrl();
            Optional<String> standing = record.all().stream()
                    .filter(each -> Shelf.name(each).equals(name))
                    .map(each -> "W/\"" + each.getMeta().getVersionId() + "\"")
                    .findFirst();
            assertThat(Optional.ofNullable(entry.getRequest().getIfMatch()))
                    .as(name)
                    .isEqualTo(standing);
        }
        Publishing.taken(record, new Publication.Write(write.transaction()));
        return write;
    }

    StoredCheck check() {
        return checks.find(record.bundle(), BOOKING).orElseThrow();
    }

    List<Task> tasks() {
        return Publishing.all(record.bundle(), Task.class).toList();
    }

    Task task(String id) {
        return tasks().stream()
                .filter(each -> each.getIdElement().getIdPart().equals(id))
                .findFirst()
                .orElseThrow();
    }

    ServiceRequest request() {
        return record.request();
    }

    static void assertKept(CheckAnswer.Write write) {
        for (BundleEntryComponent entry : write.transaction().getEntry()) {
            Resource each = entry.getResource();
            if (each.getMeta().hasProfile()) {
                assertThat(ProfileValidator.errors(each)).as(Shelf.name(each)).isEmpty();
                assertThat(ReferenceTargets.misdirected(each))
                        .as(Shelf.name(each))
                        .isEmpty();
            }
        }
    }

    /** The same presentation with another lens in hand, by the bank and on the box. */
    static Presented withLens(Presented old, CheckedLens lens) {
        Carton carton = new Carton(
                old.carton().raw(),
                old.carton().label(),
                Optional.of(Checks.unit(lens)),
                Optional.of(new Carton.BoxRead(lens, "Practitioner/nurse-2")),
                old.carton().state());
        return withCarton(old, carton);
    }

    static Presented withCarton(Presented old, Carton carton) {
        return new Presented(
                old.patient(),
                old.eyes(),
                old.plan(),
                carton,
                old.axis(),
                old.allergies(),
                old.backUps(),
                old.people(),
                old.at());
    }

    static Presented withBackUps(Presented old, List<BackUp> backUps) {
        return new Presented(
                old.patient(),
                old.eyes(),
                old.plan(),
                old.carton(),
                old.axis(),
                old.allergies(),
                backUps,
                old.people(),
                old.at());
    }

    /** One labelled step stronger. */
    static Presented stronger(Presented old, Expected expected) {
        CheckedLens lens = expected.lens();
        return withLens(old, new CheckedLens(lens.model(), lens.power().plus(Dioptres.of(0.5)), lens.cylinder()));
    }
}
