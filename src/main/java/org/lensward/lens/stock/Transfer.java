package org.lensward.lens.stock;

import java.time.LocalDate;
import org.lensward.eye.Limit;
import org.lensward.quantity.Days;
import org.lensward.quantity.Kilometres;

/**
 * How a carton gets from one site to another.
 *
 * @param from the site it lies at, such as {@code Location/north}
 * @param to the site it is needed at
 * @param takes days from sending for it to having it; 0 is the same day
 * @param distance how far; at most 10,000 km
 */
public record Transfer(String from, String to, Limit<Days> takes, Limit<Kilometres> distance) {

    private static final int FURTHEST = 10_000;
    private static final int HECTOMETRES = 10;

    public Transfer {
        if (from.equals(to)) {
            throw new IllegalArgumentException("A transfer from " + from + " to itself");
        }
        if (distance.value().value() > FURTHEST) {
            throw new IllegalArgumentException("A transfer of " + distance.value());
        }
    }

    /** Whether what is sent for today is there on that day. */
    public boolean arrives(LocalDate today, LocalDate day) {
        return !takes.value().after(today).isAfter(day);
    }

    /** The distance in whole hundreds of metres, so that sums are exact. */
    int hectometres() {
        return (int) Math.round(distance.value().value() * HECTOMETRES);
    }

    /** The same road the other way. */
    Transfer back() {
        return new Transfer(to, from, takes, distance);
    }
}
