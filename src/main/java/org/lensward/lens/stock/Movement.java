package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.Optional;

/** One thing that happens to one carton of the bank. */
public sealed interface Movement {

    /** Which kind of thing. */
    MovementKind kind();

    /** The booking it is done for, such as {@code ServiceRequest/b1}. */
    default Optional<String> booking() {
        return Optional.empty();
    }

    /** Why, where a person must say why. */
    default Optional<String> reason() {
        return Optional.empty();
    }

    /** Where it lies afterwards, where it changes its place. */
    default Optional<String> to() {
        return Optional.empty();
    }

    /**
     * It was delivered.
     *
     * @param day of the delivery
     */
    record GoodsIn(LocalDate day) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.GOODS_IN;
        }
    }

    /**
     * It is promised to a booking.
     *
     * @param forBooking the booking
     * @param day of the operation
     */
    record Reserve(String forBooking, LocalDate day) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.RESERVE;
        }

        @Override
        public Optional<String> booking() {
            return Optional.of(forBooking);
        }
    }

    /**
     * It is taken to theatre.
     *
     * @param forBooking the booking it was reserved for
     * @param day of the operation
     */
    record Pick(String forBooking, LocalDate day) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.PICK;
        }

        @Override
        public Optional<String> booking() {
            return Optional.of(forBooking);
        }
    }

    /**
     * It goes back to the shelf unopened, or is promised no longer.
     *
     * @param from the booking it was held for
     */
    record Return(String from) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.RETURN;
        }

        @Override
        public Optional<String> booking() {
            return Optional.of(from);
        }
    }

    /**
     * It is in the eye.
     *
     * @param in the booking it was picked for
     * @param day of the operation
     */
    record Implant(String in, LocalDate day) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.IMPLANT;
        }

        @Override
        public Optional<String> booking() {
            return Optional.of(in);
        }
    }

    /**
     * It was opened, dropped or lost.
     *
     * @param because what happened
     */
    record Waste(String because) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.WASTE;
        }

        @Override
        public Optional<String> reason() {
            return Optional.of(because);
        }
    }

    /**
     * Nobody may use it until it is released.
     *
     * @param because the recall, the damage or the doubt
     */
    record Quarantine(String because) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.QUARANTINE;
        }

        @Override
        public Optional<String> reason() {
            return Optional.of(because);
        }
    }

    /**
     * The doubt is settled: it is free again.
     *
     * @param because what settled it
     * @param day on which it is released
     */
    record Release(String because, LocalDate day) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.RELEASE;
        }

        @Override
        public Optional<String> reason() {
            return Optional.of(because);
        }
    }

    /**
     * It is carried to another store; whom it is promised to, and whether it may be used, stay as they are.
     *
     * @param store where it lies now, such as {@code Location/north-store}
     */
    record Carry(String store) implements Movement {
        @Override
        public MovementKind kind() {
            return MovementKind.CARRY;
        }

        @Override
        public Optional<String> to() {
            return Optional.of(store);
        }
    }
}
