package org.lensward.lens;

import java.util.List;
import java.util.stream.Stream;

/**
 * The lenses that must be in the building before the anaesthetic.
 *
 * @param primary the lens to implant
 * @param backUps the spare and those fall-back lenses that could be planned
 */
public record LensKit(KitLens primary, List<KitLens> backUps) {

    public LensKit {
        backUps = List.copyOf(backUps);
        if (primary.role() != KitRole.PRIMARY) {
            throw new IllegalArgumentException("The first lens of a kit is the primary one");
        }
    }

    /** Primary first. */
    public List<KitLens> all() {
        return Stream.concat(Stream.of(primary), backUps.stream()).toList();
    }
}
