package org.lensward.check;

import static org.lensward.finding.FindingCode.CHECK_ALLERGIES_DIFFER;
import static org.lensward.finding.FindingCode.CHECK_BACK_UP_ABSENT;
import static org.lensward.finding.FindingCode.CHECK_SECOND_PERSON_MISSING;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The room: allergies asked, back-ups standing by, two people. */
final class TheatreComparison {

    private TheatreComparison() {}

    static Stream<Difference> of(Situation here) {
        return Stream.of(allergies(here), here.where(Comparison.BACK_UPS, backUps(here)), people(here))
                .flatMap(each -> each);
    }

    private static Stream<Difference> allergies(Situation here) {
        Set<String> expected = plain(here.expected().allergies());
        Optional<Set<String>> asked = here.presented().allergies().map(TheatreComparison::plain);
        return asked.filter(expected::equals).isPresent()
                ? Stream.empty()
                : Stream.of(new Difference(
                        CHECK_ALLERGIES_DIFFER,
                        "allergies",
                        words(expected),
                        asked.map(TheatreComparison::words).orElse(Difference.NOT_STATED)));
    }

    private static Set<String> plain(Set<String> allergies) {
        Set<String> plain = new TreeSet<>();
        allergies.forEach(each -> plain.add(each.strip().toLowerCase(Locale.ROOT)));
        return plain;
    }

    private static String words(Set<String> allergies) {
        return allergies.isEmpty() ? "none known" : String.join(", ", allergies);
    }

    /** Each carton stands by for one role only. */
    private static Stream<Difference> backUps(Situation here) {
        List<BackUp> found = new ArrayList<>(here.presented().backUps());
        List<Difference> missing = new ArrayList<>();
        for (BackUp needed : here.expected().backUps()) {
            Optional<BackUp> match = found.stream()
                    .filter(each -> each.role() == needed.role())
                    .filter(each -> each.lens().sameAs(needed.lens()))
                    .findFirst();
            match.ifPresentOrElse(
                    found::remove,
                    () -> missing.add(new Difference(
                            CHECK_BACK_UP_ABSENT,
                            "back-up",
                            needed.toString(),
                            instead(needed, here.presented().backUps()))));
        }
        return missing.stream();
    }

    private static String instead(BackUp needed, List<BackUp> found) {
        return Situation.said(
                found.stream().filter(each -> each.role() == needed.role()).findFirst());
    }

    private static Stream<Difference> people(Situation here) {
        People people = here.presented().people();
        if (here.policy().twoPeople().contains(here.at())) {
            return people.areTwo() ? Stream.empty() : Stream.of(missing("two different people", people));
        }
        return people.reader().isPresent() ? Stream.empty() : Stream.of(missing("one person", people));
    }

    private static Difference missing(String expected, People people) {
        return new Difference(
                CHECK_SECOND_PERSON_MISSING,
                "people",
                expected,
                Situation.said(people.reader()) + " and " + Situation.said(people.second()));
    }
}
