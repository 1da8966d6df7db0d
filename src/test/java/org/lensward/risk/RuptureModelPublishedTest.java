package org.lensward.risk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.assertj.core.data.Offset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Sex;
import org.lensward.eye.Sign;

/** Narendran et al., Eye 2009;23:31-37: the table of adjusted odds ratios, and worked products of it. */
class RuptureModelPublishedTest {

    private static final double EXACT = 1e-12;

    @ParameterizedTest
    @CsvFileSource(resources = "/published/narendran-2009.csv", useHeadersInDisplayName = true)
    void worked_products(ArgumentsAccessor row) {
        Candidate candidate = Candidate.reference()
                .age(row.getInteger(1))
                .sex(Sex.valueOf(row.getString(2)))
                .pupil(row.getString(3).equals("large") ? 8.0 : 6.0)
                .length(row.getDouble(4));
        candidate = with(candidate, row.getString(5), Sign.GLAUCOMA);
        candidate = with(candidate, row.getString(6), Sign.PSEUDOEXFOLIATION);
        candidate = with(candidate, row.getString(7), Sign.BROWN_OR_WHITE_LENS);
        candidate = with(candidate, row.getString(8), Sign.FUNDUS_NOT_SEEN);
        candidate = with(candidate, row.getString(9), Sign.DOXAZOSIN);
        candidate = with(candidate, row.getString(10), Sign.CANNOT_LIE_FLAT);
        assertPrinted(candidate.odds(), row.getString(11));
        assertPrinted(candidate.risk().probability().value() * 100, row.getString(12));
        assertThat(candidate.risk().unknown()).isEmpty();
    }

    private static Candidate with(Candidate candidate, @Nullable String mark, Sign sign) {
        return mark == null ? candidate : candidate.with(sign);
    }

    private static void assertPrinted(double computed, String printed) {
        BigDecimal number = new BigDecimal(printed);
        Offset<Double> halfLastDigit = within(number.ulp().doubleValue() / 2 + 1e-9);
        assertThat(computed).isCloseTo(number.doubleValue(), halfLastDigit);
    }

    @ParameterizedTest
    @CsvSource({"59, 1", "60, 1.14", "69, 1.14", "70, 1.42", "79, 1.42", "80, 1.58", "89, 1.58", "90, 2.37", "101, 2.37"
    })
    void age(int years, double ratio) {
        assertThat(Candidate.reference().age(years).odds()).isCloseTo(ratio, within(EXACT));
    }

    @ParameterizedTest
    @CsvSource({"FEMALE, 1", "MALE, 1.28"})
    void sex(Sex sex, double ratio) {
        assertThat(Candidate.reference().sex(sex).odds()).isCloseTo(ratio, within(EXACT));
    }

    @ParameterizedTest
    @CsvSource({
        "GLAUCOMA, 1.30",
        "DIABETIC_RETINOPATHY, 1.63",
        "BROWN_OR_WHITE_LENS, 2.99",
        "FUNDUS_NOT_SEEN, 2.46",
        "PSEUDOEXFOLIATION, 2.92",
        "PHACODONESIS, 2.92",
        "DOXAZOSIN, 1.51",
        "CANNOT_LIE_FLAT, 1.27",
        // not in the table
        "TAMSULOSIN, 1",
        "SWOLLEN_LENS, 1",
        "VITRECTOMY, 1"
    })
    void signs(Sign sign, double ratio) {
        assertThat(Candidate.reference().with(sign).odds()).isCloseTo(ratio, within(EXACT));
    }

    /** The classes are the paper's, their limits of 5 and 7 mm the policy's. */
    @ParameterizedTest
    @CsvSource({"4.9, 1.45", "5.0, 1.14", "6.9, 1.14", "7.0, 1"})
    void pupil(double millimetres, double ratio) {
        assertThat(Candidate.reference().pupil(millimetres).odds()).isCloseTo(ratio, within(EXACT));
    }

    @ParameterizedTest
    @CsvSource({"25.99, 1", "26.00, 1.47"})
    void axial_length(double millimetres, double ratio) {
        assertThat(Candidate.reference().length(millimetres).odds()).isCloseTo(ratio, within(EXACT));
    }

    /** The published 0.87 and 0.36 never lower the risk shown for a patient. */
    @ParameterizedTest
    @CsvSource({
        "CONSULTANT, 1",
        "ASSOCIATE_SPECIALIST, 1",
        "STAFF_GRADE, 1",
        "FELLOW, 1.65",
        "REGISTRAR, 1.60",
        "SENIOR_HOUSE_OFFICER, 3.73"
    })
    void surgeon(SurgeonGrade grade, double ratio) {
        assertThat(Candidate.reference().surgeon(grade).odds()).isCloseTo(ratio, within(EXACT));
    }
}
