package org.lensward.flow;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.lensward.outcome.OutcomePolicy;

/** Reads the hospital's outcome policy from YAML, as {@link PolicyFile} does its policy; no plan depends on it. */
public final class OutcomePolicyFile {

    private OutcomePolicyFile() {}

    /** The outcome policy that ships with the application. */
    public static OutcomePolicy shipped() {
        return PolicyFile.shipped("/outcome-policy.yaml", OutcomePolicy.class);
    }

    /** The hospital's own, or the shipped one where it names none. */
    public static OutcomePolicy orShipped(@Nullable Path file) {
        return file == null ? shipped() : PolicyFile.read(file, OutcomePolicy.class);
    }
}
