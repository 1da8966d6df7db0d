package org.lensward.board.check;

import java.util.List;

/**
 * One question of a checkpoint.
 *
 * @param id under which the answer is sent
 * @param kind how it is answered
 * @param ask the question, large, written to be read aloud
 * @param help what to do, in a sentence
 * @param options what can be pressed, where something is pressed
 * @param preset what stands in the field before anybody types
 */
record Question(String id, Kind kind, String ask, String help, List<Option> options, String preset) {

    Question {
        options = List.copyOf(options);
    }

    /** Typed or scanned. */
    static Question typed(String id, Kind kind, String ask, String help) {
        return new Question(id, kind, ask, help, List.of(), "");
    }

    /** Pressed. */
    static Question pressed(String id, Kind kind, String ask, String help, List<Option> options) {
        return new Question(id, kind, ask, help, options, "");
    }

    Question preset(String text) {
        return new Question(id, kind, ask, help, options, text);
    }

    /** How a question is answered. */
    enum Kind {
        /** Scanned or typed, ended by Enter. */
        TEXT,
        /** Digits of a date, day first. */
        DATE,
        /** A number with its sign. */
        NUMBER,
        /** One of a few. */
        ONE,
        /** Each that is so, then on. */
        EACH,
        /** The carton's barcodes. */
        CARTON
    }

    /**
     * Something to press.
     *
     * @param value that is sent
     * @param words on it
     */
    record Option(String value, String words) {}
}
