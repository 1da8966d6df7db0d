package org.lensward.lens.stock;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Limit;
import org.lensward.lens.KitRole;
import org.lensward.quantity.Days;
import org.lensward.quantity.PureNumber;

/**
 * How the lens bank is kept. Every value is a default that a hospital can replace.
 *
 * @param leadTime from an order to the carton on the shelf, in calendar days
 * @param safetyFactor standard deviations of the demand during the lead time held above its mean
 * @param floor fewest cartons of a common power, whatever the demand computed
 * @param common a power used at least once in so many days is common
 * @param expiresSoon a carton with no more than so many days left is listed
 * @param shared for how many operations of one day and site one carton may stand by, by role; a role not named is never shared, the
 *     primary lens cannot be
 * @param transfers between sites; a row holds both ways unless the way back has a row of its own; no row, no transfer
 */
public record StockPolicy(
        Limit<Days> leadTime,
        Limit<PureNumber> safetyFactor,
        Limit<PureNumber> floor,
        Limit<Days> common,
        Limit<Days> expiresSoon,
        Map<KitRole, Limit<PureNumber>> shared,
        List<Transfer> transfers) {

    public StockPolicy {
        shared = Map.copyOf(shared);
        transfers = List.copyOf(transfers);
        if (shared.containsKey(KitRole.PRIMARY)) {
            throw new IllegalArgumentException("The primary lens stands by for nobody else");
        }
        if (shared.values().stream().anyMatch(limit -> !isCount(limit.value()))) {
            throw new IllegalArgumentException("A carton stands by for a whole number of operations, one at least");
        }
        if (safetyFactor.value().value() < 0
                || !isWhole(floor.value())
                || floor.value().value() < 0) {
            throw new IllegalArgumentException("Neither a safety factor nor a floor, a whole number, is below nought");
        }
        if (common.value().value() < 1) {
            throw new IllegalArgumentException("How common a power is, is told over one day at least");
        }
    }

    /** For how many operations one carton in that role may stand by; one where it is not shared. */
    public int operationsPerCarton(KitRole role) {
        return Optional.ofNullable(shared.get(role))
                .map(limit -> (int) limit.value().value())
                .orElse(1);
    }

    /** The way from one site to another, where there is one. */
    public Optional<Transfer> transfer(String from, String to) {
        return Stream.concat(transfers.stream(), transfers.stream().map(Transfer::back))
                .filter(way -> way.from().equals(from) && way.to().equals(to))
                .findFirst();
    }

    private static boolean isCount(PureNumber number) {
        return number.value() >= 1 && isWhole(number);
    }

    private static boolean isWhole(PureNumber number) {
        return number.value() == Math.rint(number.value());
    }
}
