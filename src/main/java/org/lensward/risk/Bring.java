package org.lensward.risk;

import java.util.Set;
import org.lensward.eye.Allergen;

/**
 * Something to have ready for one eye.
 *
 * @param item what kind of thing
 * @param count how many
 * @param particulars which one, such as the agent with its concentration; empty where any will do
 * @param contains substances in it that an allergy may forbid
 * @param reason why it is asked for
 */
public record Bring(TheatreItem item, int count, String particulars, Set<Allergen> contains, String reason) {

    public Bring {
        contains = Set.copyOf(contains);
        if (count < 1) {
            throw new IllegalArgumentException("Bring at least one " + item);
        }
    }
}
