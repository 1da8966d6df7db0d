package org.lensward.risk;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Eye;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Measured;
import org.lensward.eye.Person;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * Posterior capsule rupture or vitreous loss by the adjusted odds ratios of Narendran et al., The Cataract National Dataset electronic
 * multicentre audit of 55,567 operations, Eye 2009;23:31-37.
 *
 * <pre>
 * C = product of the odds ratios,  odds = C p0 / (1 - p0),  p = odds / (1 + odds)
 * </pre>
 *
 * The reference is a woman under 60 with a large pupil, no other factor, operated on by a consultant. A surgeon's ratio below one never
 * lowers the risk shown. A fact the record is silent about is listed as unknown. A unit that has counted its own ruptures moves every
 * probability by {@link Recalibration}.
 */
public final class RuptureModel {

    private final RiskPolicy policy;

    public RuptureModel(RiskPolicy policy) {
        this.policy = policy;
    }

    /**
     * The risk of this operation.
     *
     * @param person whose eye it is
     * @param eye the eye to be operated on
     * @param operation the day, by which age is counted
     * @param surgeon the operating surgeon's grade, where it is known
     */
    public RuptureRisk assess(Person person, Eye eye, LocalDate operation, Optional<Measured<SurgeonGrade>> surgeon) {
        List<RiskFactor> factors = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        age(person, operation, factors, unknown);
        sex(person, factors, unknown);
        signs(eye, factors, unknown);
        pupil(eye, factors, unknown);
        length(eye, factors, unknown);
        surgeon(surgeon, factors, unknown);
        double product = factors.stream()
                .mapToDouble(factor -> factor.oddsRatio().value())
                .reduce(1, (a, b) -> a * b);
        return new RuptureRisk(probability(product), PureNumber.of(product), factors, unknown, policy.isRecalibrated());
    }

    private Probability probability(double product) {
        double baseline = policy.ruptureBaseline().value().value();
        double odds = product * baseline / (1 - baseline);
        double shift = Recalibration.shift(
                policy.ruptureObserved().value(), policy.ruptureExpected().value());
        return Recalibration.moved(Probability.of(odds / (1 + odds)), shift);
    }

    private static void age(Person person, LocalDate operation, List<RiskFactor> factors, List<String> unknown) {
        if (person.birthDate().isEmpty()) {
            unknown.add("age");
            return;
        }
        long age = ChronoUnit.YEARS.between(person.birthDate().get(), operation);
        double ratio = age < 60 ? 1 : age < 70 ? 1.14 : age < 80 ? 1.42 : age < 90 ? 1.58 : 2.37;
        add("age " + age, ratio, person.evidence().at("birthDate"), factors);
    }

    private static void sex(Person person, List<RiskFactor> factors, List<String> unknown) {
        switch (person.sex()) {
            case MALE -> add("male", 1.28, person.evidence().at("gender"), factors);
            case UNKNOWN -> unknown.add("sex");
            case FEMALE -> {} // the reference
        }
    }

    private static void signs(Eye eye, List<RiskFactor> factors, List<String> unknown) {
        sign(eye, 1.30, factors, unknown, Sign.GLAUCOMA);
        sign(eye, 1.63, factors, unknown, Sign.DIABETIC_RETINOPATHY);
        sign(eye, 2.99, factors, unknown, Sign.BROWN_OR_WHITE_LENS);
        sign(eye, 2.46, factors, unknown, Sign.FUNDUS_NOT_SEEN);
        // One factor in the paper: either sign counts once.
        sign(eye, 2.92, factors, unknown, Sign.PSEUDOEXFOLIATION, Sign.PHACODONESIS);
        sign(eye, 1.51, factors, unknown, Sign.DOXAZOSIN);
        sign(eye, 1.27, factors, unknown, Sign.CANNOT_LIE_FLAT);
    }

    private static void sign(Eye eye, double ratio, List<RiskFactor> factors, List<String> unknown, Sign... either) {
        for (Sign sign : either) {
            Optional<Entry> entry = eye.history().affirmed(sign);
            if (entry.isPresent()) {
                add(sign.toString(), ratio, entry.get().evidence(), factors);
                return;
            }
        }
        for (Sign sign : either) {
            if (eye.history().unknown(sign)) {
                unknown.add(sign.toString());
            }
        }
    }

    private void pupil(Eye eye, List<RiskFactor> factors, List<String> unknown) {
        if (eye.pupil().isEmpty()) {
            unknown.add("dilated pupil");
            return;
        }
        Measured<Millimetres> pupil = eye.pupil().get();
        if (pupil.value().compareTo(policy.smallPupil().value()) < 0) {
            add("small pupil", 1.45, pupil.evidence(), factors);
        } else if (pupil.value().compareTo(policy.largePupil().value()) < 0) {
            add("medium pupil", 1.14, pupil.evidence(), factors);
        }
    }

    private static void length(Eye eye, List<RiskFactor> factors, List<String> unknown) {
        if (eye.biometry().isEmpty()) {
            unknown.add("axial length");
            return;
        }
        var length = eye.biometry().get().axialLength();
        add("axial length 26 mm or more", length.value().value() >= 26 ? 1.47 : 1, length.evidence(), factors);
    }

    private static void surgeon(
            Optional<Measured<SurgeonGrade>> surgeon, List<RiskFactor> factors, List<String> unknown) {
        if (surgeon.isEmpty()) {
            unknown.add("surgeon's grade");
            return;
        }
        SurgeonGrade grade = surgeon.get().value();
        add(
                "operated on by " + grade.code().replace('-', ' '),
                Math.max(1, grade.oddsRatio()),
                surgeon.get().evidence(),
                factors);
    }

    private static void add(String words, double ratio, Evidence evidence, List<RiskFactor> factors) {
        if (ratio > 1) {
            factors.add(new RiskFactor(words, PureNumber.of(ratio), evidence));
        }
    }
}
