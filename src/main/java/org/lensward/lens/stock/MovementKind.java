package org.lensward.lens.stock;

import org.lensward.finding.Coded;

/** What can happen to a carton. */
public enum MovementKind implements Coded {
    GOODS_IN("taken in"),
    RESERVE("reserved"),
    PICK("picked"),
    RETURN("returned"),
    IMPLANT("implanted"),
    WASTE("written off"),
    QUARANTINE("put in quarantine"),
    RELEASE("released"),
    CARRY("carried to another store");

    private final String done;

    MovementKind(String done) {
        this.done = done;
    }

    /** As a sentence says it of the carton. */
    public String done() {
        return done;
    }
}
