package org.lensward.plan.order;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.lensward.finding.FindingCode;

/**
 * Whereabouts on the list an eye belongs by what was found of it. Common practice, no source.
 *
 * @param place whereabouts
 * @param reasons why
 */
public record Placing(Place place, List<String> reasons) {

    private static final Set<FindingCode> PRESSURE = EnumSet.of(FindingCode.PRESSURE_RAISED, FindingCode.PRESSURE_HIGH);

    private static final Set<FindingCode> INFECTION =
            EnumSet.of(FindingCode.LIDS_INFECTED, FindingCode.INFECTION_LIKELIER);

    private static final Set<FindingCode> DIFFICULT = EnumSet.of(
            FindingCode.CAPSULE_RUPTURE_LIKELIER,
            FindingCode.CAPSULE_MAY_TEAR_OUT,
            FindingCode.CAPSULE_OPEN_BEHIND,
            FindingCode.ZONULES_WEAK,
            FindingCode.LENS_WHITE_OR_BROWN,
            FindingCode.IRIS_MAY_BE_FLOPPY,
            FindingCode.COOPERATION_IN_DOUBT,
            FindingCode.CHAMBER_SHALLOW);

    public Placing {
        reasons = List.copyOf(reasons);
    }

    /**
     * The place of one eye.
     *
     * @param planned whether a lens is planned for it
     * @param withoutLatex whether the room must be free of latex
     * @param found what was found of it
     */
    public static Placing of(boolean planned, boolean withoutLatex, Collection<FindingCode> found) {
        if (!planned) {
            return new Placing(Place.NOT_YET, List.of("no lens is planned yet"));
        }
        if (found.stream().anyMatch(INFECTION::contains)) {
            return new Placing(Place.LAST, words("may leave bacteria behind", INFECTION, found));
        }
        List<String> first = new ArrayList<>();
        if (found.stream().anyMatch(PRESSURE::contains)) {
            first.add("the pressure inside the eye is raised");
        }
        if (withoutLatex) {
            first.add("the room must be free of latex");
        }
        if (!first.isEmpty()) {
            return new Placing(Place.FIRST, first);
        }
        return found.stream().anyMatch(DIFFICULT::contains)
                ? new Placing(Place.EARLY, words("difficult", DIFFICULT, found))
                : new Placing(Place.ANYWHERE, List.of());
    }

    private static List<String> words(String why, Set<FindingCode> asked, Collection<FindingCode> found) {
        String codes = String.join(
                ", ",
                asked.stream()
                        .filter(found::contains)
                        .map(code -> code.code().replace('-', ' '))
                        .toList());
        return List.of(why + ": " + codes);
    }
}
