package org.lensward.board.access;

/** A signed-in person asked for something in the name of another. */
public final class NotYourName extends RuntimeException {

    private static final long serialVersionUID = 1;

    NotYourName() {
        super("You are signed in under another name than the one given. What you do is written under your own name.");
    }
}
