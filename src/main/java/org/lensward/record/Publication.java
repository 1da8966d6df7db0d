package org.lensward.record;

import org.hl7.fhir.r4.model.Bundle;

/** What is to be done to the record about one booking. */
public sealed interface Publication {

    /**
     * One transaction to post.
     *
     * @param bundle everything the plan says, and everything of an earlier plan that no longer holds
     */
    record Write(Bundle bundle) implements Publication {}

    /**
     * Nothing to write.
     *
     * @param reason why
     */
    record Nothing(Reason reason) implements Publication {}

    /** Why nothing is written. */
    enum Reason {
        /** The record already holds this very plan. */
        UNCHANGED,
        /** The operation has begun or is over: the plan is history now. */
        OPERATION_BEGUN,
        /** The booking is not, or no longer, active. */
        NOT_ACTIVE,
        /** The booking was withdrawn and there is no plan of it. */
        NO_PLAN
    }
}
