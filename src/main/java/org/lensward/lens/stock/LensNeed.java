package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.lens.KitRole;
import org.lensward.quantity.Dioptres;

/**
 * One lens of one booking's kit that must be in the building.
 *
 * @param booking such as {@code ServiceRequest/b1}
 * @param role what it is for
 * @param model the catalogue entry
 * @param power as labelled, signed
 * @param cylinder as labelled, for a toric lens
 * @param day of the operation
 * @param location the site it is needed at
 */
public record LensNeed(
        String booking,
        KitRole role,
        String model,
        Dioptres power,
        Optional<Dioptres> cylinder,
        LocalDate day,
        String location) {}
