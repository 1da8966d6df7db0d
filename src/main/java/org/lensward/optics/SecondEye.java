package org.lensward.optics;

import static org.lensward.finding.FindingCode.SECOND_EYE_EXPECTED;

import java.util.List;
import java.util.Locale;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/**
 * What the first eye's prediction error teaches about the second.
 *
 * <pre>
 * expected = predicted + f (achieved1 - predicted1)
 * </pre>
 *
 * @param fraction f, from 0 to 1
 */
public record SecondEye(Limit<PureNumber> fraction) {

    public SecondEye {
        if (fraction.value().value() < 0 || fraction.value().value() > 1) {
            throw new IllegalArgumentException("A fraction lies between 0 and 1, not at " + fraction.value());
        }
    }

    /**
     * Half of the error, which took the mean absolute error from 0.44 to 0.36 D (secondary source; Covert et al., Ophthalmology
     * 2010;117:49, value from memory).
     */
    public static SecondEye half() {
        return new SecondEye(new Limit<>(PureNumber.of(0.5), "Covert et al., Ophthalmology 2010;117:49 (from memory)"));
    }

    /**
     * The refraction to expect of the second eye.
     *
     * @param predicted by the formula
     * @param firstError achieved minus predicted spherical equivalent of the first eye, same formula
     */
    public Outcome<Dioptres> expected(Dioptres predicted, Measured<Dioptres> firstError) {
        Dioptres shift = shift(firstError.value());
        Dioptres expected = predicted.plus(shift);
        Finding finding = Finding.of(
                SECOND_EYE_EXPECTED,
                firstError.evidence(),
                String.format(Locale.ROOT, "%.0f %%", 100 * fraction.value().value()),
                expected.signed(),
                predicted.signed());
        return Outcome.ready(expected, List.of(finding));
    }

    /** The refraction to aim the formula at, so that the target is what can be expected. */
    public Dioptres aim(Dioptres target, Dioptres firstError) {
        return target.minus(shift(firstError));
    }

    private Dioptres shift(Dioptres firstError) {
        return Dioptres.of(fraction.value().value() * firstError.value());
    }
}
