package org.lensward.risk.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.finding.Evidence;
import org.lensward.risk.preparation.AgentChoice.PassedOver;

/**
 * The hospital's agents, in order of preference for each purpose. The first that no allergy and no sign forbids is taken; where
 * none is left, a person chooses.
 *
 * @param agents for each purpose
 */
record Formulary(Map<Purpose, List<Agent>> agents) {

    AgentChoice choose(Purpose purpose, Facts facts) {
        List<PassedOver> passedOver = new ArrayList<>();
        for (Agent agent : agents.getOrDefault(purpose, List.of())) {
            Optional<PassedOver> forbidden = forbidden(agent, facts);
            if (forbidden.isEmpty()) {
                return new AgentChoice(purpose, Optional.of(agent), passedOver, questions(agent, facts));
            }
            passedOver.add(forbidden.get());
        }
        return new AgentChoice(purpose, Optional.empty(), passedOver, List.of());
    }

    private static Optional<PassedOver> forbidden(Agent agent, Facts facts) {
        List<String> reasons = new ArrayList<>();
        List<Evidence> evidence = new ArrayList<>();
        for (Allergy allergy : facts.person().allergies()) {
            forbids(allergy, agent).ifPresent(substance -> {
                reasons.add("allergic to " + substance + " (" + allergy.words() + ")");
                evidence.add(allergy.evidence());
            });
        }
        facts.affirmed(agent.unsuitable()).forEach(entry -> {
            reasons.add(entry.words());
            evidence.add(entry.evidence());
        });
        return reasons.isEmpty() ? Optional.empty() : Optional.of(new PassedOver(agent, reasons, evidence));
    }

    private static Optional<Allergen> forbids(Allergy allergy, Agent agent) {
        return allergy.to().stream()
                .sorted()
                .filter(substance -> agent.contains().contains(substance)
                        || allergy.severe() && agent.crossReacts().contains(substance))
                .findFirst();
    }

    private static List<String> questions(Agent agent, Facts facts) {
        List<String> questions = new ArrayList<>();
        for (Allergy allergy : facts.person().allergies()) {
            if (allergy.to().isEmpty()) {
                questions.add("whether the allergy \"" + allergy.words() + "\" forbids " + agent.name());
            }
            // A reaction that is not recorded as severe may have been so.
            allergy.to().stream()
                    .sorted()
                    .filter(agent.crossReacts()::contains)
                    .forEach(substance -> questions.add("how severe the reaction to " + substance + " was"));
        }
        facts.unknown(agent.unsuitable()).forEach(sign -> questions.add(Question.about(sign)));
        return questions.stream().distinct().toList();
    }
}
