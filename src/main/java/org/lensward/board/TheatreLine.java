package org.lensward.board;

/**
 * One eye of the theatre list, in words.
 *
 * @param start date and time of the operation
 * @param patient initials only
 * @param booking the booking's id
 * @param eye right or left
 * @param lens model and labelled power of the primary lens
 * @param predicted spherical equivalent predicted by the formula the lens was chosen by
 * @param risk of capsule rupture
 * @param state ready, provisional or withheld; planning while there is no plan yet
 * @param reason the gravest finding
 */
public record TheatreLine(
        String start,
        String patient,
        String booking,
        String eye,
        String lens,
        String predicted,
        String risk,
        String state,
        String reason) {

    /** Whether the eye has a plan, even a withheld one. */
    public boolean planned() {
        return !state.equals("planning");
    }
}
