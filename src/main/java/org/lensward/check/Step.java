package org.lensward.check;

import java.util.List;
import org.lensward.finding.Finding;

/** What one action does to a lens check. */
public sealed interface Step {

    /**
     * It goes on.
     *
     * @param next where it stands now
     * @param overridden differences that a clinician answered for; mostly none
     */
    record Advanced(CheckProgress next, List<Difference> overridden) implements Step {
        public Advanced {
            overridden = List.copyOf(overridden);
        }
    }

    /** The same once more: nothing changes. */
    record Repeated() implements Step {}

    /**
     * A hard stop: the check has failed and stays so.
     *
     * @param next the failed check
     * @param differences every one; never empty
     */
    record Stopped(CheckProgress next, List<Difference> differences) implements Step {
        public Stopped {
            differences = List.copyOf(differences);
        }
    }

    /**
     * The ground has shifted: what was verified counts no more.
     *
     * @param reason what changed
     */
    record Voided(Finding reason) implements Step {}

    /**
     * Not now and not so; the check is unchanged.
     *
     * @param reasons why; never empty
     */
    record Refused(List<Finding> reasons) implements Step {
        public Refused {
            reasons = List.copyOf(reasons);
        }
    }
}
