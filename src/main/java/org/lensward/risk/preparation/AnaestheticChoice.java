package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.finding.Evidence;

/** The anaesthetic of one eye: chosen, undecided while facts are missing, or a person's to find. */
public sealed interface AnaestheticChoice {

    /** What was refused before it, and why. */
    List<Refused> refused();

    /**
     * A kind that may not be used.
     *
     * @param kind which
     * @param reasons what refuses it
     * @param evidence where that stands
     */
    record Refused(Anaesthetic kind, List<String> reasons, List<Evidence> evidence) {

        public Refused {
            reasons = List.copyOf(reasons);
            evidence = List.copyOf(evidence);
        }

        /** Which, and why not. */
        @Override
        public String toString() {
            return "no " + kind + ": " + String.join(", ", reasons);
        }
    }

    /**
     * Nothing recorded speaks against it, and nothing that could is unknown.
     *
     * @param kind which
     * @param refused those preferred to it
     */
    record Chosen(Anaesthetic kind, List<Refused> refused) implements AnaestheticChoice {

        public Chosen {
            refused = List.copyOf(refused);
        }
    }

    /**
     * Undecided: the first that may be right, and what would have to be known.
     *
     * @param leaning the kind if every unknown fact turns out harmless
     * @param unknown those facts; never empty
     * @param refused those preferred to it
     */
    record Undecided(Anaesthetic leaning, List<String> unknown, List<Refused> refused) implements AnaestheticChoice {

        public Undecided {
            unknown = List.copyOf(unknown);
            refused = List.copyOf(refused);
            if (unknown.isEmpty()) {
                throw new IllegalArgumentException("Undecided, but nothing is unknown");
            }
        }
    }

    /**
     * The policy leaves none; the anaesthetist decides.
     *
     * @param refused every kind, with its reasons
     */
    record NoneLeft(List<Refused> refused) implements AnaestheticChoice {

        public NoneLeft {
            refused = List.copyOf(refused);
        }
    }
}
