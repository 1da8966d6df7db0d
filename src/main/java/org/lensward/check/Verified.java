package org.lensward.check;

/**
 * A checkpoint that was passed.
 *
 * @param at which
 * @param carton the carton's label in one line
 * @param place where the patient stood on the list
 */
public record Verified(Checkpoint at, String carton, String place) {}
