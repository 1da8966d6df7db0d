package org.lensward.board.bank;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.board.api.Found;

/**
 * What one carton's page shows.
 *
 * @param carton as it stands now
 * @param history what happened to it, the latest first
 * @param takers bookings whose kit has this kind of lens
 * @param places where it may be carried to
 * @param done what was just done, in words
 * @param refused why what was asked could not be done; nothing was written then
 * @param typed what was filled in, to be sent again
 */
record CartonSheet(
        CartonLine carton,
        List<Happened> history,
        List<Taker> takers,
        List<Names.Choice> places,
        Optional<String> done,
        List<Found> refused,
        Typed typed) {

    /**
     * One thing that happened.
     *
     * @param at day and time
     * @param done in words
     * @param who answers for it
     * @param detail why, for whom or where to
     */
    record Happened(String at, String done, String who, String detail) {}

    /**
     * A booking that could have it.
     *
     * @param booking its id
     * @param patient who
     * @param role of the lens in the kit
     * @param day of the operation
     */
    record Taker(String booking, String patient, String role, LocalDate day) {

        /** Booking and day, as the form sends them. */
        public String key() {
            return booking + " " + day;
        }
    }

    /**
     * What was filled in.
     *
     * @param movement which form
     * @param taker booking and day
     * @param reason why
     * @param to which store
     */
    record Typed(String movement, String taker, String reason, String to) {

        static final Typed NOTHING = new Typed("", "", "", "");

        public String reasonFor(String form) {
            return movement.equals(form) ? reason : "";
        }
    }

    /** The forms that make sense of it as it stands. */
    public boolean may(String movement) {
        return switch (movement) {
            case "reserve" ->
                carton.state().equals("available") && !carton.shelf().equals("out of date");
            case "return" -> carton.isHeld();
            case "release" -> carton.state().equals("quarantined");
            case "quarantine" -> !carton.isGone() && !carton.state().equals("quarantined");
            case "carry" -> !carton.isGone() && !carton.state().equals("picked") && !places.isEmpty();
            default -> !carton.isGone();
        };
    }
}
