package org.lensward.risk.named;

import static org.lensward.finding.FindingCode.ALLERGY;
import static org.lensward.finding.FindingCode.ALLERGY_NOT_UNDERSTOOD;
import static org.lensward.finding.FindingCode.BLOOD_THINNED;
import static org.lensward.finding.FindingCode.COOPERATION_IN_DOUBT;
import static org.lensward.finding.FindingCode.INFECTION_LIKELIER;
import static org.lensward.finding.FindingCode.IRIS_MAY_BE_FLOPPY;
import static org.lensward.finding.FindingCode.LIDS_INFECTED;
import static org.lensward.finding.FindingCode.NEEDLE_HAZARDOUS;

import java.util.stream.Stream;
import org.lensward.eye.Biometry;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.risk.FloppyIris;
import org.lensward.risk.preparation.AnaestheticPolicy;

/** Risks that the person brings: drugs, allergies, infection, how they can lie and look. */
final class PersonRisks {

    private final AnaestheticPolicy policy;

    PersonRisks(AnaestheticPolicy policy) {
        this.policy = policy;
    }

    Stream<Finding> name(Subject subject) {
        return Stream.of(
                        allergies(subject),
                        notUnderstood(subject),
                        floppyIris(subject),
                        new Grounds().add(subject.affirmed(Sign.LID_INFECTION)).name(LIDS_INFECTED),
                        new Grounds()
                                .add(subject.affirmed(Sign.RESISTANT_BACTERIA))
                                .name(INFECTION_LIKELIER),
                        new Grounds()
                                .add(subject.affirmed(Sign.WARFARIN, Sign.DIRECT_ANTICOAGULANT, Sign.ANTIPLATELET_DRUG))
                                .name(BLOOD_THINNED),
                        new Grounds()
                                .add(subject.affirmed(Sign.CANNOT_FIXATE, Sign.CANNOT_LIE_FLAT, Sign.CANNOT_COOPERATE))
                                .name(COOPERATION_IN_DOUBT),
                        needle(subject))
                .flatMap(each -> each);
    }

    private static Stream<Finding> allergies(Subject subject) {
        Grounds grounds = new Grounds();
        subject.person().allergies().forEach(allergy -> grounds.add(allergy.words(), allergy.evidence()));
        return grounds.name(ALLERGY);
    }

    private static Stream<Finding> notUnderstood(Subject subject) {
        return subject.person().allergies().stream()
                .filter(allergy -> allergy.to().isEmpty())
                .map(allergy -> Finding.of(ALLERGY_NOT_UNDERSTOOD, allergy.evidence(), allergy.words()));
    }

    private static Stream<Finding> floppyIris(Subject subject) {
        Grounds grounds = new Grounds();
        for (Sign drug : FloppyIris.DRUGS) {
            subject.eye().history().affirmed(drug).ifPresent(taken -> FloppyIris.ratio(drug)
                    .ifPresentOrElse(
                            ratio -> grounds.add(taken, ratio.value()),
                            () -> grounds.add(taken.words(), taken.evidence())));
        }
        return grounds.name(IRIS_MAY_BE_FLOPPY);
    }

    private Stream<Finding> needle(Subject subject) {
        Grounds grounds = new Grounds();
        subject.eye()
                .biometry()
                .map(Biometry::axialLength)
                .filter(length -> length.value().compareTo(policy.longEye().value()) > 0)
                .ifPresent(
                        length -> grounds.add("axial length " + length.value().rounded(), length.evidence()));
        return grounds.add(subject.affirmed(Sign.STAPHYLOMA, Sign.WARFARIN, Sign.DIRECT_ANTICOAGULANT))
                .name(NEEDLE_HAZARDOUS);
    }
}
