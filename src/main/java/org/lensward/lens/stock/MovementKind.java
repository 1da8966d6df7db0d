package org.lensward.lens.stock;

import java.util.Locale;

/** What can happen to a carton. */
public enum MovementKind {
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

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** As a sentence says it of the carton. */
    public String done() {
        return done;
    }
}
