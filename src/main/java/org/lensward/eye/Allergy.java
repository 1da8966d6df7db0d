package org.lensward.eye;

import java.util.Set;
import org.lensward.finding.Evidence;

/**
 * An allergy or intolerance that has not been refuted.
 *
 * @param to the substances it forbids; empty where what the record names is not understood, which frees nothing
 * @param severe whether the record tells of a severe reaction or of high criticality
 * @param words what the record calls it
 * @param evidence where it stands
 */
public record Allergy(Set<Allergen> to, boolean severe, String words, Evidence evidence) {

    public Allergy {
        to = Set.copyOf(to);
    }
}
