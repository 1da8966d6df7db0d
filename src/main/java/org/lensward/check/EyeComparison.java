package org.lensward.check;

import static org.lensward.finding.FindingCode.CHECK_EYE_DIFFERS;

import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Laterality;

/** The eye: planned, booked, measured and marked are one. */
final class EyeComparison {

    private EyeComparison() {}

    static Stream<Difference> of(Situation here) {
        EyesRead read = here.presented().eyes();
        Stream<Difference> stated = Stream.of(
                        eye(here, "eye by the booking", read.booking()),
                        eye(here, "eye by the sheet", read.sheet()),
                        eye(here, "eye by the biometry", read.biometry()))
                .flatMap(each -> each);
        return Stream.concat(stated, here.where(Comparison.MARK, eye(here, "eye by the mark", read.mark())));
    }

    private static Stream<Difference> eye(Situation here, String where, Optional<Laterality> read) {
        return Situation.unequal(CHECK_EYE_DIFFERS, where, here.expected().eye(), read);
    }
}
