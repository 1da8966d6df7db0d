package org.lensward.check;

import static org.lensward.finding.FindingCode.CHECK_CARTON_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_CARTON_NOT_FREE;
import static org.lensward.finding.FindingCode.CHECK_LENS_EXPIRED;
import static org.lensward.finding.FindingCode.CHECK_PACKAGE_NOT_INTACT;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.lens.stock.LensUnit;

/** The carton: the one the bank holds, free for this booking, in date and whole. */
final class CartonComparison {

    private CartonComparison() {}

    static Stream<Difference> of(Situation here) {
        Carton carton = here.presented().carton();
        return Stream.of(
                        carton.unit().stream().flatMap(unit -> held(unit, carton, here)),
                        expiry(carton, here),
                        Situation.unequal(
                                CHECK_PACKAGE_NOT_INTACT, "package", here.at().packageState(), carton.state()))
                .flatMap(each -> each);
    }

    private static Stream<Difference> held(LensUnit unit, Carton carton, Situation here) {
        Stream<Difference> same = carton.label().isOf(unit.identity())
                ? Stream.empty()
                : Stream.of(new Difference(
                        CHECK_CARTON_DIFFERS,
                        "carton in the bank",
                        unit.identity().toString(),
                        carton.label().toString()));
        Stream<Difference> free = isFree(unit, here)
                ? Stream.empty()
                : Stream.of(new Difference(
                        CHECK_CARTON_NOT_FREE,
                        "carton",
                        "free for " + here.expected().booking(),
                        unit.state().code()
                                + unit.heldFor().map(each -> " for " + each).orElse("")));
        return Stream.concat(same, free);
    }

    private static boolean isFree(LensUnit unit, Situation here) {
        boolean ours = unit.heldFor().filter(here.expected().booking()::equals).isPresent();
        return switch (unit.state()) {
            case AVAILABLE -> true;
            case RESERVED, PICKED -> ours;
            case IMPLANTED -> ours && here.at() == Checkpoint.SIGN_OUT;
            case WASTED, QUARANTINED -> false;
        };
    }

    /** In date on the day of the operation and on the day it is looked at; the last day counts. */
    private static Stream<Difference> expiry(Carton carton, Situation here) {
        LocalDate operation = here.expected().operation();
        LocalDate seen = here.presented().at().toLocalDate();
        LocalDate needed = seen.isAfter(operation) ? seen : operation;
        Optional<LocalDate> stated = carton.label().expiry();
        return stated.filter(each -> !each.isBefore(needed)).isPresent()
                ? Stream.empty()
                : Stream.of(new Difference(CHECK_LENS_EXPIRED, "expiry", needed + " or later", Situation.said(stated)));
    }
}
