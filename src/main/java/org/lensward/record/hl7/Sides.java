package org.lensward.record.hl7;

import static org.lensward.eye.Laterality.LEFT;
import static org.lensward.eye.Laterality.RIGHT;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.record.SidedCodes;
import org.lensward.record.Systems;
import org.lensward.record.incoming.RefusedInput;

/**
 * Which eye, out of every place of a message that may say so. The places stand in order of nearness to the value: the nearest that says
 * anything names the eye, and a farther one may be silent or wider (an order for both eyes) but never say the other eye.
 *
 * <p>RE and LE are right and left <em>ear</em> in HL7 table 0163, so they are no eye here; R and L are the body's sides.
 */
final class Sides {

    /** HL7 table 0163 (eyes and bare sides; value from memory) and the procedure modifiers of HL7 table 0340 (value from memory). */
    private static final Map<String, Set<Laterality>> TOKENS = Map.of(
            "OD", EnumSet.of(RIGHT),
            "OS", EnumSet.of(LEFT),
            "OU", EnumSet.of(RIGHT, LEFT),
            "R", EnumSet.of(RIGHT),
            "L", EnumSet.of(LEFT),
            "B", EnumSet.of(RIGHT, LEFT),
            "RT", EnumSet.of(RIGHT),
            "LT", EnumSet.of(LEFT),
            "50", EnumSet.of(RIGHT, LEFT));

    private Sides() {}

    /** The eyes a code names; none where it speaks of something else. */
    static Set<Laterality> of(Coded coded) {
        Set<Laterality> eyes = EnumSet.noneOf(Laterality.class);
        eyes.addAll(TOKENS.getOrDefault(coded.code(), Set.of()));
        coded.in(Systems.SNOMED).ifPresent(code -> eyes.addAll(SidedCodes.ofSnomed(code)));
        return eyes;
    }

    /** The eyes named anywhere in those codes. */
    static Set<Laterality> of(List<Coded> codes) {
        Set<Laterality> eyes = EnumSet.noneOf(Laterality.class);
        codes.forEach(each -> eyes.addAll(of(each)));
        return eyes;
    }

    /**
     * The one eye that the places name together.
     *
     * @param what what it is of, for a message
     * @param nearestFirst the eyes that each place names
     */
    static Optional<Laterality> eye(String what, List<Set<Laterality>> nearestFirst) {
        List<Set<Laterality>> said =
                nearestFirst.stream().filter(each -> !each.isEmpty()).toList();
        if (said.isEmpty()) {
            return Optional.empty();
        }
        Set<Laterality> nearest = said.get(0);
        boolean contradicted = said.stream().anyMatch(each -> !each.containsAll(nearest));
        if (nearest.size() > 1 || contradicted) {
            String words = said.stream()
                    .flatMap(Set::stream)
                    .distinct()
                    .sorted()
                    .map(Laterality::toString)
                    .collect(Collectors.joining(" and "));
            throw new RefusedInput(FindingCode.MESSAGE_EYES_CONFLICT, what, what, words);
        }
        return Optional.of(nearest.iterator().next());
    }
}
