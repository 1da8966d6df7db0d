package org.lensward.record;

import static org.lensward.finding.FindingCode.CODE_UNMAPPED;
import static org.lensward.finding.FindingCode.DRUG_NOT_UNDERSTOOD;
import static org.lensward.finding.FindingCode.SIDE_NOT_STATED;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Medication;
import org.hl7.fhir.r4.model.MedicationRequest;
import org.hl7.fhir.r4.model.MedicationStatement;
import org.hl7.fhir.r4.model.MedicationStatement.MedicationStatementStatus;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;
import org.lensward.eye.EyeSurgery;
import org.lensward.eye.History;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Laterality;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;

/** Reads diagnoses, operations, drugs and examiners' remarks into what they say of one eye. */
final class HistoryReader {

    private final Shelf shelf;
    private final Evidences evidences;
    private final EyeCodes eyeCodes;
    private final Laterality eye;
    private final List<Entry> entries = new ArrayList<>();
    private final List<EyeSurgery> surgery = new ArrayList<>();
    private final List<Finding> found = new ArrayList<>();

    private HistoryReader(Shelf shelf, Evidences evidences, Laterality eye) {
        this.shelf = shelf;
        this.evidences = evidences;
        this.eyeCodes = new EyeCodes(shelf);
        this.eye = eye;
    }

    static EyeHistory read(Shelf shelf, Evidences evidences, Patient patient, Laterality eye) {
        HistoryReader reader = new HistoryReader(shelf, evidences, eye);
        shelf.all(Condition.class)
                .filter(each -> of(patient, each.getSubject()))
                .forEach(reader::condition);
        shelf.all(Procedure.class)
                .filter(each -> of(patient, each.getSubject()))
                .forEach(reader::procedure);
        shelf.all(Observation.class)
                .filter(each -> of(patient, each.getSubject()))
                .forEach(reader::observation);
        shelf.all(MedicationStatement.class)
                .filter(each -> of(patient, each.getSubject()))
                .forEach(reader::taken);
        shelf.all(MedicationRequest.class)
                .filter(each -> of(patient, each.getSubject()))
                .forEach(reader::prescribed);
        return new EyeHistory(new History(reader.entries), reader.surgery, reader.found);
    }

    private static boolean of(Patient patient, Reference subject) {
        return Shelf.refers(List.of(subject), patient);
    }

    private void condition(Condition condition) {
        String verification = code(condition.getVerificationStatus());
        String clinical = code(condition.getClinicalStatus());
        boolean over = Set.of("inactive", "remission", "resolved").contains(clinical);
        if (verification.equals("entered-in-error") || over) {
            return;
        }
        boolean affirmed = !verification.equals("refuted");
        Set<Sign> signs = SignCodes.of(condition.getCode());
        if (signs.isEmpty() && affirmed && concernsThisEye(condition)) {
            unmapped(condition, condition.getCode());
        }
        signs.forEach(sign -> add(sign, affirmed, condition, condition.getCode(), condition.getBodySite()));
    }

    private boolean concernsThisEye(Condition condition) {
        Set<Laterality> eyes = eyeCodes.eyes(condition.getCode(), condition.getBodySite());
        return eyeCodes.isEye(condition.getBodySite()) && (eyes.isEmpty() || eyes.contains(eye));
    }

    private void procedure(Procedure procedure) {
        if (procedure.getStatus() != ProcedureStatus.COMPLETED) {
            return;
        }
        SignCodes.of(procedure.getCode())
                .forEach(sign -> add(sign, true, procedure, procedure.getCode(), procedure.getBodySite()));
        if (eyeCodes.eyes(procedure.getCode(), procedure.getBodySite()).contains(eye)) {
            surgery.add(new EyeSurgery(
                    Codes.words(procedure.getCode()),
                    Dates.day(procedure.getPerformed()),
                    evidences.of(procedure, "performed")));
        }
    }

    private void observation(Observation observation) {
        if (MeasurementGroups.isFinal(observation)
                && observation.getValue() instanceof BooleanType value
                && value.hasValue()) {
            SignCodes.of(observation.getCode())
                    .forEach(sign -> add(
                            sign,
                            value.booleanValue(),
                            observation,
                            observation.getCode(),
                            List.of(observation.getBodySite())));
        }
    }

    private void taken(MedicationStatement statement) {
        if (statement.getStatus() != MedicationStatementStatus.ENTEREDINERROR) {
            boolean taken = statement.getStatus() != MedicationStatementStatus.NOTTAKEN;
            boolean now = !Set.of("completed", "stopped")
                    .contains(
                            statement.getStatus() == null
                                    ? ""
                                    : statement.getStatus().toCode());
            drug(statement, taken, now, statement.getMedication());
        }
    }

    private void prescribed(MedicationRequest request) {
        boolean withdrawn = request.getDoNotPerform()
                || request.hasStatus()
                        && Set.of("entered-in-error", "cancelled", "draft")
                                .contains(request.getStatus().toCode());
        if (!withdrawn) {
            boolean now = !request.hasStatus()
                    || !Set.of("completed", "stopped")
                            .contains(request.getStatus().toCode());
            drug(request, true, now, request.getMedication());
        }
    }

    /** Having ever taken an alpha blocker counts; what thins the blood counts while it is taken. */
    private void drug(Resource resource, boolean taken, boolean now, @Nullable Type medication) {
        CodeableConcept drug = named(medication);
        SignCodes.of(drug).stream()
                .filter(sign -> now || !SignCodes.onlyWhileTaken(sign))
                .forEach(sign -> add(sign, taken, resource, drug, List.of()));
        if (taken && !SignCodes.namesDrug(drug)) {
            found.add(Finding.of(DRUG_NOT_UNDERSTOOD, evidences.of(resource, "medication"), Codes.words(drug)));
        }
    }

    private CodeableConcept named(@Nullable Type medication) {
        if (medication instanceof CodeableConcept drug) {
            return drug;
        }
        if (!(medication instanceof Reference reference)) {
            return new CodeableConcept();
        }
        return reference.getResource() instanceof Medication contained
                ? contained.getCode()
                : shelf.find(Medication.class, reference)
                        .map(Medication::getCode)
                        .orElseGet(CodeableConcept::new);
    }

    private void add(
            Sign sign, boolean present, Resource resource, CodeableConcept words, List<CodeableConcept> sites) {
        Set<Laterality> eyes = eyeCodes.eyes(words, sites);
        boolean sideless = eyes.isEmpty() && !SignCodes.ofThePerson(sign);
        if (sideless && !present) {
            return; // a denial that names no eye frees neither
        }
        if (sideless) {
            found.add(Finding.of(SIDE_NOT_STATED, evidences.of(resource, "bodySite"), Codes.words(words)));
        }
        if (eyes.isEmpty() || eyes.contains(eye)) {
            entries.add(new Entry(sign, present, Codes.words(words), evidences.of(resource, "code")));
        }
    }

    private void unmapped(Resource resource, CodeableConcept code) {
        found.add(Finding.of(CODE_UNMAPPED, evidences.of(resource, "code"), Codes.words(code)));
    }

    private static String code(CodeableConcept status) {
        return status.getCodingFirstRep().hasCode() ? status.getCodingFirstRep().getCode() : "";
    }
}
