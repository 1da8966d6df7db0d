package org.lensward.check;

/**
 * One attempt to pass a checkpoint.
 *
 * @param at the checkpoint
 * @param presented what was read, scanned and asked
 * @param exemption whether a clinician goes on in spite of a difference
 */
public record Attempt(Checkpoint at, Presented presented, Exemption exemption) {

    /** Without any exemption. */
    public Attempt(Checkpoint at, Presented presented) {
        this(at, presented, Exemption.none());
    }
}
