package org.lensward.record.bank;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.quantity.Dioptres;

/**
 * One carton as it arrives.
 *
 * @param model the catalogue entry, such as {@code DeviceDefinition/lens-1}
 * @param power as labelled, signed
 * @param cylinder as labelled, for a toric lens
 * @param identity what its label says
 * @param barcode the label's whole identifier as a person reads it, where it was scanned
 * @param location where it is put
 * @param owner whose it is
 * @param day of the delivery
 */
public record Delivery(
        String model,
        Dioptres power,
        Optional<Dioptres> cylinder,
        LensUnit.Identity identity,
        Optional<String> barcode,
        String location,
        Owner owner,
        LocalDate day) {}
