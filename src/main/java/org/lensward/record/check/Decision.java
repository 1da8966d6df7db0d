package org.lensward.record.check;

/**
 * What a surgeon decides about a plan.
 *
 * @param surgeon who, as the record refers to them, such as {@code Practitioner/s1}
 * @param reason why; needed for everything but a confirmation
 */
public record Decision(String surgeon, String reason) {

    public Decision {
        surgeon = surgeon.strip();
        reason = reason.strip();
    }

    boolean isComplete() {
        return !surgeon.isEmpty() && !reason.isEmpty();
    }
}
