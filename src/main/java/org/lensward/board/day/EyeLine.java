package org.lensward.board.day;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.check.CheckState;

/**
 * One eye of the theatre list, as the Day page shows it.
 *
 * @param booking the booking's id
 * @param day of the operation
 * @param time of day, such as {@code 08:30}; empty where only the day is known
 * @param theatre where, as the appointment has it
 * @param patient who
 * @param eye right eye or left eye
 * @param surgeon who operates, or the grade that is booked
 * @param state ready, provisional, withheld or planning; done once the lens is in
 * @param lens what is planned to go in; empty where no lens is
 * @param risk of capsule rupture; empty where none was assessed
 * @param open what is missing or to be done, gravest first
 * @param check where the lens check stands; empty where none is open
 */
public record EyeLine(
        String booking,
        LocalDate day,
        String time,
        String theatre,
        Person patient,
        String eye,
        String surgeon,
        String state,
        Optional<PlannedLens> lens,
        Optional<Risk> risk,
        List<String> open,
        Optional<CheckState> check) {

    public EyeLine {
        open = List.copyOf(open);
    }

    /**
     * Whose eye it is.
     *
     * @param name family name first
     * @param number the first identifier
     * @param born date of birth, as recorded
     */
    public record Person(String name, String number, String born) {

        /** Names nobody. */
        @Override
        public String toString() {
            return "Person";
        }
    }

    /**
     * The lens to go in.
     *
     * @param words model and labelled power
     * @param prediction what it is predicted to leave
     */
    public record PlannedLens(String words, Optional<PredictionBar> prediction) {}

    /**
     * Capsule rupture.
     *
     * @param percent the probability
     * @param factor what raises it most; empty for the reference eye
     */
    public record Risk(String percent, String factor) {}

    /** What the filter by text looks at, in the page alone. */
    public String searched() {
        return Stream.of(
                        patient.name(),
                        patient.number(),
                        patient.born(),
                        booking,
                        lens.map(PlannedLens::words).orElse(""))
                .collect(Collectors.joining(" "))
                .toLowerCase(Locale.ROOT)
                .replace('\u00a0', ' ');
    }

    /** The first thing that is open. */
    public Optional<String> first() {
        return open.stream().findFirst();
    }

    /** The lens check in words. */
    public String checked() {
        return check.map(CheckState::toString).orElse("none open");
    }

    /** Names nobody. */
    @Override
    public String toString() {
        return "EyeLine[" + booking + "]";
    }
}
