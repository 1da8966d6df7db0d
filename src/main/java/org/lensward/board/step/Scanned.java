package org.lensward.board.step;

import static org.lensward.finding.FindingCode.CHECK_SCAN_UNREADABLE;
import static org.lensward.finding.FindingCode.UNIT_NOT_IN_BANK;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.lensward.check.Carton;
import org.lensward.check.PackageState;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.label.CartonLabel;
import org.lensward.lens.label.LabelReader;
import org.lensward.lens.stock.LensUnit;

/**
 * The carton that was scanned.
 *
 * @param label what its barcodes say
 * @param unit the bank's carton with that label, where it has one
 */
public record Scanned(CartonLabel label, Optional<LensUnit> unit) {

    private static final Evidence SCAN = new Evidence("scan", "", "");

    /** What the barcodes say, or why they cannot be read. */
    public static Outcome<CartonLabel> label(List<String> scans, LocalDate today) {
        return new LabelReader(today).read(scans, SCAN);
    }

    /** With the carton of the bank; of several alike the one held for the booking. */
    public static Scanned of(CartonLabel label, Outcome<List<LensUnit>> bank, String booking) {
        List<LensUnit> alike = bank.value().orElse(List.of()).stream()
                .filter(unit -> label.identity().filter(unit.identity()::equals).isPresent())
                .toList();
        return new Scanned(
                label,
                alike.stream()
                        .filter(unit -> unit.heldFor().filter(booking::equals).isPresent())
                        .findFirst()
                        .or(() -> alike.stream().findFirst()));
    }

    /** A carton of the bank, or why nothing can be done with it: half a label tells no carton from its neighbours. */
    public static Outcome<Scanned> ofTheBank(
            CartonLabel label, Function<LensUnit.Identity, Outcome<List<LensUnit>>> bank, String booking) {
        if (label.identity().isEmpty()
                || label.lot().isEmpty() && label.serial().isEmpty()) {
            return Outcome.withheld(
                    Finding.of(CHECK_SCAN_UNREADABLE, SCAN, "it gives no expiry, or neither lot nor serial number"));
        }
        Scanned scanned = of(label, bank.apply(label.identity().get()), booking);
        return scanned.unit().isPresent()
                ? Outcome.ready(scanned)
                : Outcome.withheld(Finding.of(UNIT_NOT_IN_BANK, SCAN, "with this label"));
    }

    /** As it is presented, with what people read on it and how they find it. */
    public Carton presented(Optional<Carton.BoxRead> read, Optional<PackageState> state) {
        return new Carton(
                label.raw(),
                new Carton.Label(label.device(), label.lot(), label.serial(), label.expiry()),
                unit,
                read,
                state);
    }
}
