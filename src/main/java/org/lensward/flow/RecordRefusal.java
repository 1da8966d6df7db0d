package org.lensward.flow;

/** The record would not, or not yet, do what was asked; asking again may help. Says nothing about a patient. */
public final class RecordRefusal extends RuntimeException {

    private static final long serialVersionUID = 1;

    RecordRefusal(String message) {
        super(message);
    }
}
