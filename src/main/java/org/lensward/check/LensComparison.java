package org.lensward.check;

import static org.lensward.finding.FindingCode.CHECK_AXIS_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_CYLINDER_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_MODEL_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_POWER_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_SECOND_PERSON_MISSING;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.finding.FindingCode;
import org.lensward.lens.stock.LensUnit;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/** The lens by the bank and by the box: model, signed power, cylinder; and the axis it will be turned to. */
final class LensComparison {

    private LensComparison() {}

    static Stream<Difference> of(Situation here) {
        return Stream.of(lenses(here), axis(here), secondReading(here)).flatMap(each -> each);
    }

    /** What bank and box say, each by itself; if neither says anything, nothing is stated. */
    private static Stream<Difference> lenses(Situation here) {
        CheckedLens expected = here.expected().lens();
        List<Stated> stated = stated(here.presented().carton());
        if (stated.isEmpty()) {
            return Stream.of(
                    difference(CHECK_MODEL_DIFFERS, "model", expected.model()),
                    difference(CHECK_POWER_DIFFERS, "power", expected.power().signed()));
        }
        return stated.stream().flatMap(each -> each.against(expected));
    }

    private static Difference difference(FindingCode code, String what, String expected) {
        return new Difference(code, what, expected, Difference.NOT_STATED);
    }

    private static List<Stated> stated(Carton carton) {
        return Stream.concat(
                        carton.unit().map(unit -> new Stated("by the bank", lens(unit))).stream(),
                        carton.read().map(read -> new Stated("on the box", read.lens())).stream())
                .toList();
    }

    private static CheckedLens lens(LensUnit unit) {
        return new CheckedLens(unit.model(), unit.power(), unit.cylinder());
    }

    private static Stream<Difference> axis(Situation here) {
        Optional<Degrees> planned = here.expected().axis();
        Optional<Degrees> read = here.presented().axis();
        boolean same = planned.isPresent() == read.isPresent()
                && planned.stream().allMatch(each -> near(read.orElseThrow(), each, here));
        return same
                ? Stream.empty()
                : Stream.of(new Difference(CHECK_AXIS_DIFFERS, "axis", words(planned), Situation.said(read)));
    }

    private static String words(Optional<Degrees> axis) {
        return axis.map(Degrees::toString).orElse("none");
    }

    /** An axis is a meridian: 0 and 180 degrees are one. */
    private static boolean near(Degrees read, Degrees planned, Situation here) {
        double turn = Math.abs(read.value() - planned.value()) % 180;
        return Math.min(turn, 180 - turn) <= here.policy().axisReading().value().value();
    }

    /** A box that the bank does not know, or at a checkpoint that asks for it, is read by somebody other than who scanned it. */
    private static Stream<Difference> secondReading(Situation here) {
        Carton carton = here.presented().carton();
        boolean needed = carton.unit().isEmpty() || here.policy().readTheBox().contains(here.at());
        Optional<String> scanned = here.presented().people().reader();
        boolean read = scanned.isPresent()
                && carton.read()
                        .map(each -> each.reader().strip())
                        .filter(each -> !each.isEmpty() && !each.equals(scanned.get()))
                        .isPresent();
        return needed && !read
                ? Stream.of(new Difference(
                        CHECK_SECOND_PERSON_MISSING,
                        "box",
                        "read by a second person",
                        Situation.said(carton.read().map(each -> "read by " + each.reader()))))
                : Stream.empty();
    }

    /** A lens as one source states it. */
    private record Stated(String where, CheckedLens lens) {

        Stream<Difference> against(CheckedLens expected) {
            Stream<Difference> model = Situation.unequal(
                    CHECK_MODEL_DIFFERS, "model " + where, expected.model(), Optional.of(lens.model()));
            Stream<Difference> power = CheckedLens.same(lens.power(), expected.power())
                    ? Stream.empty()
                    : Stream.of(new Difference(
                            CHECK_POWER_DIFFERS,
                            "power " + where,
                            expected.power().signed(),
                            lens.power().signed()));
            Stream<Difference> cylinder = lens.sameCylinder(expected)
                    ? Stream.empty()
                    : Stream.of(new Difference(
                            CHECK_CYLINDER_DIFFERS,
                            "cylinder " + where,
                            words(expected.cylinder()),
                            words(lens.cylinder())));
            return Stream.of(model, power, cylinder).flatMap(each -> each);
        }

        private static String words(Optional<Dioptres> cylinder) {
            return cylinder.map(Dioptres::rounded).orElse("none");
        }
    }
}
