package org.lensward.risk.preparation;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lensward.finding.Evidence;

/**
 * The agent that serves a purpose in this patient.
 *
 * @param purpose what it is for
 * @param agent the first of the policy's list that nothing recorded forbids; none where nothing is left
 * @param passedOver those that stand before it in the list and are forbidden
 * @param unknown what has to be asked before it is given
 */
public record AgentChoice(Purpose purpose, Optional<Agent> agent, List<PassedOver> passedOver, List<String> unknown) {

    public AgentChoice {
        passedOver = List.copyOf(passedOver);
        unknown = List.copyOf(unknown);
    }

    /**
     * An agent that is forbidden.
     *
     * @param agent which
     * @param reasons what forbids it
     * @param evidence where that stands
     */
    public record PassedOver(Agent agent, List<String> reasons, List<Evidence> evidence) {

        public PassedOver {
            reasons = List.copyOf(reasons);
            evidence = List.copyOf(evidence);
        }

        /** Which, and why not. */
        @Override
        public String toString() {
            return "no " + agent.name() + ": " + String.join(", ", reasons);
        }
    }

    /** Where everything that forbids an agent stands. */
    List<Evidence> evidence() {
        return passedOver.stream()
                .flatMap(each -> each.evidence().stream())
                .distinct()
                .toList();
    }

    /** The agent with its dose, or that a person has to choose. */
    String words() {
        return agent.map(Agent::toString).orElse("ask which " + purpose + " to use: none of the policy's agents suits");
    }

    /** Why those before it were passed over; empty where none was. */
    String passedOverWords() {
        return passedOver.stream().map(PassedOver::toString).collect(Collectors.joining("; "));
    }
}
