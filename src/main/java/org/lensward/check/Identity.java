package org.lensward.check;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;

/**
 * Who a patient is. A name is no part of it: namesakes share it. Prints nothing that identifies.
 *
 * @param numbers identifiers, each with the system that gave it
 * @param birthDate date of birth, where it is known
 */
public record Identity(Set<Number> numbers, Optional<LocalDate> birthDate) {

    /** How many identifiers must agree; WHO Patient Safety Solutions, 2007: at least two. */
    static final int NEEDED = 2;

    public Identity {
        numbers = Set.copyOf(numbers);
    }

    /**
     * One identifier. It means nothing without the system that gave it.
     *
     * @param system such as the hospital's numbering
     * @param value as it is written
     */
    public record Number(String system, String value) {
        public Number {
            system = system.strip();
            value = value.strip();
            if (system.isEmpty() || value.isEmpty()) {
                throw new IllegalArgumentException("An identifier has a system and a value");
            }
        }

        @Override
        public String toString() {
            return "Number";
        }
    }

    /** Whether it suffices to tell one patient from all others. */
    public boolean isComplete() {
        return numbers.size() >= NEEDED && birthDate.isPresent();
    }

    @Override
    public String toString() {
        return "Identity of " + numbers.size() + " identifiers";
    }
}
