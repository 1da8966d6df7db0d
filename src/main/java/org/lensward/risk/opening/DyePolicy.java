package org.lensward.risk.opening;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The dyes of a hospital.
 *
 * @param ranges for each agent
 * @param forSight preparations that make the capsule visible, in order of preference
 * @param forLaser what a dye-absorbing laser needs
 * @param protocols the named local protocols for concentrations outside the ranges; none as shipped
 */
public record DyePolicy(
        Map<DyeAgent, DyeRange> ranges,
        List<DyePreparation> forSight,
        DyePreparation forLaser,
        List<DyeProtocol> protocols) {

    public DyePolicy {
        ranges = Map.copyOf(ranges);
        forSight = List.copyOf(forSight);
        protocols = List.copyOf(protocols);
        for (DyeAgent each : DyeAgent.values()) {
            if (!ranges.containsKey(each)) {
                throw new IllegalArgumentException("The policy gives no range for " + each);
            }
        }
    }

    DyeRange range(DyePreparation preparation) {
        return Objects.requireNonNull(ranges.get(preparation.agent()));
    }

    boolean unusual(DyePreparation preparation) {
        return !range(preparation).includes(preparation.concentration().value());
    }

    Optional<DyeProtocol> protocol(DyePreparation preparation) {
        return protocols.stream().filter(each -> each.covers(preparation)).findFirst();
    }
}
