package org.lensward.board.api;

/** Somebody decided on a plan or a check that is no longer as it was seen. Nothing was written. */
public final class Overtaken extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final boolean anotherPlan;

    Overtaken(boolean anotherPlan) {
        super(
                anotherPlan
                        ? "The plan has changed since you opened this page."
                        : "Somebody else acted on it meanwhile.");
        this.anotherPlan = anotherPlan;
    }

    /** Whether the plan itself is another. */
    public boolean anotherPlan() {
        return anotherPlan;
    }
}
