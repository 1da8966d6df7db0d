package org.lensward.risk.preparation;

import static org.lensward.finding.FindingCode.CLOTTING_TOO_SLOW;
import static org.lensward.finding.FindingCode.CLOTTING_UNKNOWN;

import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Readings.Dated;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.quantity.PureNumber;

/** Drugs that slow clotting: they go on, and warfarin's effect is measured near the operation. */
final class BleedingCare implements Step {

    private static final String SOURCE =
            "Royal Colleges of Anaesthetists and of Ophthalmologists, Local anaesthesia for"
                    + " ophthalmic surgery, 2012 (value from memory); Kara-Junior et al., Arq Bras Oftalmol 2018 (abstract read)";

    private final AnaestheticPolicy policy;

    BleedingCare(AnaestheticPolicy policy) {
        this.policy = policy;
    }

    @Override
    public void write(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.BLEEDING)
                .signs(facts, List.of(Sign.WARFARIN, Sign.DIRECT_ANTICOAGULANT, Sign.ANTIPLATELET_DRUG));
        StringBuilder action = new StringBuilder();
        facts.affirmed(Sign.WARFARIN).ifPresent(warfarin -> action.append(warfarin(warfarin, sheet, draft)));
        if (facts.has(Sign.DIRECT_ANTICOAGULANT)) {
            action.append("Direct anticoagulant: timing of the dose by local policy, not stopped unasked. ");
        }
        if (facts.has(Sign.ANTIPLATELET_DRUG)) {
            action.append("Aspirin and other antiplatelet drugs go on. ");
        }
        sheet.add(draft, action.toString().strip(), SOURCE);
    }

    private String warfarin(Entry warfarin, Sheet sheet, Draft draft) {
        Optional<Dated<PureNumber>> clotting = sheet.facts().examination().clotting();
        Optional<String> useless = useless(clotting, sheet.facts());
        if (useless.isPresent()) {
            draft.ask("the INR near the operation");
            sheet.add(Finding.of(CLOTTING_UNKNOWN, warfarin.evidence(), warfarin.words(), useless.get()));
            return "Warfarin goes on; measure the INR within " + days() + " days before the operation. ";
        }
        var measured = clotting.orElseThrow().measured();
        String figure = Figures.of(measured.value());
        draft.because("INR " + figure, measured.evidence());
        if (measured.value().compareTo(policy.highestClotting().value()) > 0) {
            sheet.add(Finding.of(
                    CLOTTING_TOO_SLOW,
                    List.of(measured.evidence(), warfarin.evidence()),
                    figure,
                    Figures.of(policy.highestClotting().value())));
            return "Defer until the INR is in the patient's range. ";
        }
        return "Warfarin goes on; the INR is in range. ";
    }

    /** Why the last figure says nothing of the day of the operation. */
    private Optional<String> useless(Optional<Dated<PureNumber>> clotting, Facts facts) {
        if (clotting.isEmpty()) {
            return Optional.of("no INR is recorded");
        }
        long days = ChronoUnit.DAYS.between(clotting.get().day(), facts.operation());
        if (days < 0) {
            return Optional.of("the INR is dated after the operation");
        }
        return days > policy.clottingDays().value().value()
                ? Optional.of("the INR will be " + days + " days old, more than " + days())
                : Optional.empty();
    }

    private String days() {
        return Figures.of(policy.clottingDays().value());
    }
}
