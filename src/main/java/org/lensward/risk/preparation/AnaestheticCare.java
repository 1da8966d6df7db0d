package org.lensward.risk.preparation;

import static org.lensward.finding.FindingCode.ANAESTHETIC_UNDECIDED;
import static org.lensward.finding.FindingCode.NO_ANAESTHETIC_LEFT;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.lensward.eye.Allergen;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.risk.Bring;
import org.lensward.risk.preparation.AnaestheticChoice.Chosen;
import org.lensward.risk.preparation.AnaestheticChoice.Refused;
import org.lensward.risk.preparation.AnaestheticChoice.Undecided;

/** The anaesthetic chosen, as the team reads it, and how the patient lies. */
final class AnaestheticCare implements Step {

    private static final String POLICY = "the hospital's policy; every kind of it is refused";

    private final AnaestheticPlanner planner;
    private final AnaestheticChoice choice;

    AnaestheticCare(AnaestheticPlanner planner, AnaestheticChoice choice) {
        this.planner = planner;
        this.choice = choice;
    }

    @Override
    public void write(Sheet sheet) {
        Draft draft = new Draft(Topic.ANAESTHETIC);
        choice.refused().forEach(refused -> because(refused, draft));
        if (choice instanceof Chosen chosen) {
            draft.because("nothing recorded refuses it", sheet.facts().person().evidence());
            planner.weighing(chosen.kind(), sheet.facts()).forEach(draft::ask);
            sheet.add(
                    draft,
                    capital(chosen.kind()) + prepare(chosen.kind(), sheet, draft),
                    planner.source(chosen.kind()));
        } else if (choice instanceof Undecided undecided) {
            undecided(undecided, sheet, draft);
        } else {
            sheet.add(draft, "Decide with the anaesthetist: the policy leaves none.", POLICY);
            sheet.add(Finding.of(
                    NO_ANAESTHETIC_LEFT,
                    evidence(choice.refused(), sheet),
                    choice.refused().stream().map(Refused::toString).collect(Collectors.joining("; "))));
        }
        position(sheet);
    }

    private void undecided(Undecided undecided, Sheet sheet, Draft draft) {
        undecided.unknown().forEach(draft::ask);
        planner.weighing(undecided.leaning(), sheet.facts()).forEach(draft::ask);
        draft.because(
                "undecided while facts are missing", sheet.facts().person().evidence());
        String agent = prepare(undecided.leaning(), sheet, draft);
        sheet.add(
                draft,
                "Undecided: unknown " + String.join("; ", undecided.unknown()) + ". If none of it speaks against it: "
                        + undecided.leaning() + agent,
                planner.source(undecided.leaning()));
        sheet.add(Finding.of(
                ANAESTHETIC_UNDECIDED,
                sheet.facts().person().evidence(),
                undecided.leaning(),
                String.join("; ", undecided.unknown())));
    }

    /** What lies ready, and the words for the agent. */
    private static String prepare(Anaesthetic kind, Sheet sheet, Draft draft) {
        if (kind.agent().isEmpty()) {
            draft.bring(kind.item());
            return " anaesthetic.";
        }
        AgentChoice agent = sheet.choose(kind.agent().get(), draft);
        if (kind != Anaesthetic.TOPICAL) {
            Set<Allergen> contains = agent.agent().map(Agent::contains).orElse(Set.of());
            draft.bring(new Bring(kind.item(), 1, agent.words(), contains, draft.reasonWords()));
        }
        return " anaesthetic: " + agent.words() + ".";
    }

    private static void because(Refused refused, Draft draft) {
        refused.evidence().forEach(where -> draft.because(refused.toString(), where));
    }

    private static List<Evidence> evidence(List<Refused> refused, Sheet sheet) {
        List<Evidence> evidence = refused.stream()
                .flatMap(each -> each.evidence().stream())
                .distinct()
                .toList();
        return evidence.isEmpty() ? List.of(sheet.facts().person().evidence()) : evidence;
    }

    private static String capital(Anaesthetic kind) {
        String words = kind.toString();
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private void position(Sheet sheet) {
        Draft draft = new Draft(Topic.POSITION).signs(sheet.facts(), List.of(Sign.CANNOT_LIE_FLAT));
        String general = choice instanceof Chosen chosen && chosen.kind() == Anaesthetic.GENERAL
                ? "Tell the anaesthetist that the patient cannot lie flat."
                : "Try the position before the list: raised head and chest, oxygen, no sedation; defer if it cannot be held.";
        List<Entry> heart = sheet.facts().affirmed(List.of(Sign.HEART_FAILURE));
        if (draft.hasReasons()) {
            heart.forEach(draft::because);
        }
        sheet.add(
                draft,
                heart.isEmpty() ? general : general + " Have the heart failure treated first.",
                "common practice, no source");
    }
}
