package org.lensward.record.outcome;

import ca.uhn.fhir.context.FhirContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryChoice;
import org.lensward.eye.BiometryPolicy;
import org.lensward.eye.Laterality;
import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;
import org.lensward.outcome.AfterSurgery;
import org.lensward.outcome.Complication;
import org.lensward.outcome.EyeKeys;
import org.lensward.outcome.OperatedEye;
import org.lensward.outcome.Refraction;
import org.lensward.record.Dates;
import org.lensward.record.Evidences;
import org.lensward.record.EyeRecord;
import org.lensward.record.RecordedRefraction;
import org.lensward.record.Shelf;
import org.lensward.record.SidedCodes;
import org.lensward.record.Systems;
import org.lensward.record.Unused;

/** Reads one person's operated eyes. Everything is matched by eye and operation, never by person alone. */
final class OperatedEyeReader {

    private final Evidences evidences;
    private final BiometryChoice choice;

    OperatedEyeReader(FhirContext fhir, BiometryPolicy policy) {
        this.evidences = new Evidences(fhir);
        this.choice = new BiometryChoice(policy);
    }

    /**
     * Every operation that left a lens.
     *
     * @param shelf all that is recorded of the person
     * @param patient the person's key
     */
    PersonsEyes read(Shelf shelf, String patient) {
        return new OfPerson(shelf, patient).read();
    }

    private static boolean isDone(Procedure procedure) {
        return procedure.getStatus() == ProcedureStatus.COMPLETED
                && procedure.getCode().getCoding().stream()
                        .filter(coding -> Systems.SNOMED.equals(coding.getSystem()))
                        .anyMatch(coding -> SidedCodes.isLensSurgery(coding.getCode()));
    }

    private final class OfPerson {

        private final Shelf shelf;
        private final String patient;
        private final List<Unused> unused = new ArrayList<>();
        private final List<DatedOperation> operations = new ArrayList<>();

        OfPerson(Shelf shelf, String patient) {
            this.shelf = shelf;
            this.patient = patient;
        }

        PersonsEyes read() {
            List<Procedure> done =
                    shelf.all(Procedure.class).filter(OperatedEyeReader::isDone).toList();
            if (done.isEmpty()) {
                return new PersonsEyes(List.of(), List.of());
            }
            EyeRecord record =
                    new EyeRecord(shelf, evidences, Shelf.name(done.get(0).getSubject()));
            done.forEach(each -> dated(each, record));
            operations.sort(
                    Comparator.comparing(DatedOperation::day).thenComparing(each -> Shelf.name(each.procedure())));
            List<RecordedRefraction> refractions = record.refractions(unused);
            List<OperatedEye> eyes = operations.stream()
                    .flatMap(each -> eye(each, record, refractions).stream())
                    .toList();
            return new PersonsEyes(eyes, unused);
        }

        private void dated(Procedure procedure, EyeRecord record) {
            Set<Laterality> eyes = record.eyes(procedure.getCode(), procedure.getBodySite());
            Optional<LocalDate> day = Dates.day(procedure.getPerformed());
            if (eyes.size() != 1) {
                unused.add(new Unused(Unused.Reason.OPERATION_WITHOUT_EYE, evidences.of(procedure, "bodySite")));
            } else if (day.isEmpty()) {
                unused.add(new Unused(Unused.Reason.OPERATION_WITHOUT_DATE, evidences.of(procedure, "performed")));
            } else {
                operations.add(new DatedOperation(procedure, eyes.iterator().next(), day.get()));
            }
        }

        private Optional<OperatedEye> eye(
                DatedOperation operation, EyeRecord record, List<RecordedRefraction> refractions) {
            Evidence evidence = evidences.of(operation.procedure(), "");
            return new LensInEye(shelf, unused)
                    .of(operation.procedure(), evidence)
                    .map(lens -> {
                        PlanThen plan = new PlanThen(shelf, operation.procedure());
                        return new OperatedEye(
                                new EyeKeys(patient, Shelf.name(operation.procedure())),
                                operation.eye(),
                                operation.day(),
                                surgeon(operation.procedure()),
                                lens,
                                plan.before(biometry(operation, record, plan), lens),
                                after(operation, record, refractions));
                    });
        }

        private Optional<Biometry> biometry(DatedOperation operation, EyeRecord record, PlanThen plan) {
            Set<String> named = plan.biometry();
            Optional<Observation> changed = named.stream()
                    .flatMap(name -> shelf.find(Observation.class, new Reference(name)).stream())
                    .filter(each -> isChanged(each, operation.procedure()))
                    .findFirst();
            if (changed.isPresent()) {
                unused.add(new Unused(Unused.Reason.BIOMETRY_CHANGED, evidences.of(changed.get(), "")));
                return Optional.empty();
            }
            Outcome<Biometry> chosen = record.biometry(choice, operation.eye(), operation.day(), named);
            if (chosen.value().isEmpty()) {
                unused.add(new Unused(Unused.Reason.BIOMETRY_IN_DOUBT, evidences.of(operation.procedure(), "")));
            }
            return chosen.value();
        }

        /** Whether a trail of the plan names another version of it than the one that stands. */
        private boolean isChanged(Observation measured, Procedure operation) {
            List<String> versions = shelf.all(Provenance.class)
                    .filter(trail -> Shelf.refers(trail.getTarget(), operation))
                    .flatMap(trail -> trail.getEntity().stream())
                    .map(each -> each.getWhat())
                    .filter(what -> Shelf.name(what).equals(Shelf.name(measured)))
                    .flatMap(
                            what -> Stream.ofNullable(what.getReferenceElement().getVersionIdPart()))
                    .toList();
            String now = measured.getMeta().getVersionId();
            return now != null && !versions.isEmpty() && !versions.contains(now);
        }

        private AfterSurgery after(DatedOperation operation, EyeRecord record, List<RecordedRefraction> refractions) {
            Optional<LocalDate> next = next(operation);
            ComplicationReader complications = new ComplicationReader(shelf, record, evidences, unused);
            Set<Complication> found = complications.of(operation, next);
            return new AfterSurgery(
                    complications.told(),
                    found,
                    Stream.concat(next.stream(), takenOut(operation.procedure()).stream())
                            .min(Comparator.naturalOrder()),
                    refractions.stream()
                            .filter(each -> belongs(each, operation))
                            .map(RecordedRefraction::refraction)
                            .toList(),
                    OpeningThen.of(operation, record.openings(operation.eye()), next));
        }

        /** The day of the next operation that put a lens into the same eye. */
        private Optional<LocalDate> next(DatedOperation operation) {
            return operations.stream()
                    .skip(operations.indexOf(operation) + 1L)
                    .filter(each -> each.eye() == operation.eye())
                    .filter(each -> each.day().isAfter(operation.day()))
                    .map(DatedOperation::day)
                    .findFirst();
        }

        /** The end of the lens's use, where that is recorded. */
        private Optional<LocalDate> takenOut(Procedure operation) {
            return new LensInEye(shelf, new ArrayList<>())
                    .uses(operation)
                    .filter(DeviceUseStatement::hasTimingPeriod)
                    .flatMap(use -> Dates.day(use.getTimingPeriod().getEndElement()).stream())
                    .findFirst();
        }

        /** Unless it names another operation it is of whichever fits; what names one of the other eye is of none. */
        private boolean belongs(RecordedRefraction refraction, DatedOperation operation) {
            List<String> named = shelf
                    .find(Observation.class, new Reference(refraction.evidence().resource()))
                    .stream()
                    .flatMap(each -> Stream.concat(each.getPartOf().stream(), each.getBasedOn().stream()))
                    .map(Shelf::name)
                    .toList();
            List<DatedOperation> meant = operations.stream()
                    .filter(each -> named.contains(Shelf.name(each.procedure())) || namesBooking(each, named))
                    .toList();
            if (meant.isEmpty()) {
                return true;
            }
            Refraction read = refraction.refraction();
            if (meant.contains(operation) && operation.eye() != read.eye()) {
                unused.add(new Unused(
                        Unused.Reason.REFRACTION_AGAINST_ITS_OPERATION,
                        refraction.evidence().at("bodySite")));
            }
            return meant.contains(operation) && operation.eye() == read.eye();
        }

        private static boolean namesBooking(DatedOperation operation, List<String> named) {
            return operation.procedure().getBasedOn().stream().map(Shelf::name).anyMatch(named::contains);
        }
    }

    /** The first performer, by the record's own name; a person named in words alone is known by a digest of them. */
    private static String surgeon(Procedure operation) {
        Reference actor = operation.getPerformerFirstRep().getActor();
        String name = Shelf.name(actor);
        if (!name.isEmpty()) {
            return name;
        }
        return actor.hasDisplay()
                ? "surgeon-" + Evidences.digest(actor.getDisplay()).substring(0, 8)
                : "not recorded";
    }
}
