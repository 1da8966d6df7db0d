package org.lensward.record.audit;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Something that was asked for through a page or a call, whether it was done or refused.
 *
 * @param at when
 * @param who the person's or program's name
 * @param roles their roles here
 * @param from the network address it came from
 * @param words what was asked, such as {@code POST /eye/{booking}/confirmation}; names no patient
 * @param about what it concerns, as references, such as {@code ServiceRequest/b1}
 * @param result how it ended
 */
public record Deed(
        Instant at,
        String who,
        List<String> roles,
        Optional<String> from,
        String words,
        List<String> about,
        Result result) {

    /** How it ended. */
    public enum Result {
        /** It was done. */
        DONE,
        /** It was refused; nothing changed but what the answer said. */
        REFUSED,
        /** It failed: the record or we had a fault. */
        FAILED;

        /** By the status of the answer (RFC 9110). */
        public static Result of(int status) {
            if (status >= 500) {
                return FAILED;
            }
            return status >= 400 ? REFUSED : DONE;
        }
    }

    public Deed {
        roles = List.copyOf(roles);
        about = List.copyOf(about);
    }

    /** Names nobody. */
    @Override
    public String toString() {
        return "Deed[" + words + ", " + result + "]";
    }
}
