package org.lensward.risk.preparation;

/** One part of the preparation. */
interface Step {

    /** Adds what this part has to say; nothing where it has nothing. */
    void write(Sheet sheet);
}
