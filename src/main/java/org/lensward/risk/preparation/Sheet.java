package org.lensward.risk.preparation;

import static org.lensward.finding.FindingCode.NO_AGENT_LEFT;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.risk.Bring;

/** The preparation of one eye as it is being written. */
final class Sheet {

    private final Facts facts;
    private final Formulary formulary;
    private final Map<Purpose, AgentChoice> choices = new EnumMap<>(Purpose.class);
    private final List<Precaution> precautions = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    Sheet(Facts facts, Formulary formulary) {
        this.facts = facts;
        this.formulary = formulary;
    }

    Facts facts() {
        return facts;
    }

    void add(Draft draft, String action, String source) {
        draft.settle(action, source).ifPresent(precautions::add);
    }

    void add(Finding finding) {
        findings.add(finding);
    }

    /** The agent for that purpose, without saying so anywhere yet. */
    AgentChoice consider(Purpose purpose) {
        return formulary.choose(purpose, facts);
    }

    /** The agent for that purpose, with its questions, its article and, where none is left, a condition. */
    AgentChoice choose(Purpose purpose, Draft draft) {
        AgentChoice choice = consider(purpose);
        boolean first = !choices.containsKey(purpose);
        choices.put(purpose, choice);
        choice.unknown().forEach(draft::ask);
        choice.passedOver()
                .forEach(passed -> passed.evidence().forEach(where -> draft.because(passed.toString(), where)));
        choice.agent().ifPresent(agent -> purpose.item()
                .ifPresent(item ->
                        draft.bring(new Bring(item, 1, agent.toString(), agent.contains(), draft.reasonWords()))));
        if (first && choice.agent().isEmpty()) {
            findings.add(noneLeft(choice));
        }
        return choice;
    }

    /** The agent in words, chosen only where the draft stays. */
    String agentWords(Purpose purpose, Draft draft) {
        return draft.hasReasons() ? choose(purpose, draft).words() : "";
    }

    private Finding noneLeft(AgentChoice choice) {
        List<Evidence> evidence =
                choice.evidence().isEmpty() ? List.of(facts.person().evidence()) : choice.evidence();
        String why = choice.passedOver().isEmpty() ? "it names none" : choice.passedOverWords();
        return Finding.of(NO_AGENT_LEFT, evidence, choice.purpose(), why);
    }

    List<Precaution> precautions() {
        return List.copyOf(precautions);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    List<AgentChoice> choices() {
        return List.copyOf(choices.values());
    }
}
