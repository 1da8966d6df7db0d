package org.lensward.check;

import java.util.List;

/** What came of a comparison. */
public sealed interface CheckResult {

    /** Everything that was asked for is as expected. */
    record Passed() implements CheckResult {}

    /**
     * Something differs.
     *
     * @param differences every one of them; never empty
     */
    record Failed(List<Difference> differences) implements CheckResult {
        public Failed {
            differences = List.copyOf(differences);
            if (differences.isEmpty()) {
                throw new IllegalArgumentException("What failed says why");
            }
        }
    }

    /** Passed exactly if there is none. */
    static CheckResult of(List<Difference> differences) {
        return differences.isEmpty() ? new Passed() : new Failed(differences);
    }

    /** Every difference; none if it passed. */
    default List<Difference> all() {
        return this instanceof Failed failed ? failed.differences() : List.of();
    }
}
