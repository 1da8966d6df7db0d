package org.lensward.check;

import static org.lensward.finding.FindingCode.CHECK_BIRTH_DATE_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_CARTON_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_CARTON_NOT_FREE;
import static org.lensward.finding.FindingCode.CHECK_EYE_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_LENS_EXPIRED;
import static org.lensward.finding.FindingCode.CHECK_MODEL_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_PACKAGE_NOT_INTACT;
import static org.lensward.finding.FindingCode.CHECK_PATIENT_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_PLAN_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_POWER_DIFFERS;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;

/** The ways in which a wrong lens has come to a patient (Kelly and Jalil, Eye 2011; Steeples et al., Eye 2016), each to be caught. */
enum WrongScan {
    WRONG_EYE_BY_THE_BOOKING(CHECK_EYE_DIFFERS),
    WRONG_EYE_BY_THE_SHEET(CHECK_EYE_DIFFERS),
    WRONG_EYE_BY_THE_BIOMETRY(CHECK_EYE_DIFFERS),
    WRONG_EYE_EVERYWHERE(CHECK_EYE_DIFFERS),
    ANOTHER_PATIENT(CHECK_PATIENT_DIFFERS),
    A_NAMESAKE(CHECK_PATIENT_DIFFERS),
    ONE_IDENTIFIER_MISREAD(CHECK_PATIENT_DIFFERS),
    NUMBERS_OF_ANOTHER_SYSTEM(CHECK_PATIENT_DIFFERS),
    ANOTHER_BIRTH_DATE(CHECK_BIRTH_DATE_DIFFERS),
    THE_OTHER_SIGN(CHECK_POWER_DIFFERS),
    ONE_STEP_AWAY(CHECK_POWER_DIFFERS),
    ONE_STEP_AWAY_ON_THE_BOX_ALONE(CHECK_POWER_DIFFERS),
    ONE_STEP_AWAY_IN_THE_BANK_ALONE(CHECK_POWER_DIFFERS),
    ANOTHER_MODEL(CHECK_MODEL_DIFFERS),
    EXPIRED(CHECK_LENS_EXPIRED),
    A_SUPERSEDED_PLAN(CHECK_PLAN_DIFFERS),
    A_CARTON_THE_BANK_HOLDS_OTHERWISE(CHECK_CARTON_DIFFERS),
    ANOTHER_BOOKINGS_CARTON(CHECK_CARTON_NOT_FREE),
    A_BROKEN_SEAL(CHECK_PACKAGE_NOT_INTACT);

    private static final double[] STEPS = {0.25, 0.5, 1};

    private final FindingCode caughtAs;

    WrongScan(FindingCode caughtAs) {
        this.caughtAs = caughtAs;
    }

    FindingCode caughtAs() {
        return caughtAs;
    }

    Presented of(Presented right, Expected expected, Random chance) {
        Spoiled scan = new Spoiled(right);
        return (switch (this) {
                    case WRONG_EYE_BY_THE_BOOKING,
                            WRONG_EYE_BY_THE_SHEET,
                            WRONG_EYE_BY_THE_BIOMETRY,
                            WRONG_EYE_EVERYWHERE -> scan.eyes(eyes(expected.eye()));
                    case ANOTHER_PATIENT,
                            A_NAMESAKE,
                            ONE_IDENTIFIER_MISREAD,
                            NUMBERS_OF_ANOTHER_SYSTEM,
                            ANOTHER_BIRTH_DATE -> scan.patient(patient(expected.patient(), chance));
                    case THE_OTHER_SIGN,
                            ONE_STEP_AWAY,
                            ONE_STEP_AWAY_ON_THE_BOX_ALONE,
                            ONE_STEP_AWAY_IN_THE_BANK_ALONE,
                            ANOTHER_MODEL -> lens(scan, expected.lens(), chance);
                    case EXPIRED -> scan.expiring(expected.operation().minusDays(1 + chance.nextInt(900)));
                    case A_SUPERSEDED_PLAN -> scan.plan(Optional.of(hex(chance)));
                    case A_CARTON_THE_BANK_HOLDS_OTHERWISE ->
                        scan.label(new Carton.Label(
                                right.carton().label().device(),
                                right.carton().label().lot(),
                                Optional.of("S-" + (1000 + chance.nextInt(1000))),
                                right.carton().label().expiry()));
                    case ANOTHER_BOOKINGS_CARTON ->
                        scan.held(UnitState.RESERVED, Optional.of("ServiceRequest/x" + chance.nextInt(99)));
                    case A_BROKEN_SEAL -> scan.found(Optional.of(PackageState.DAMAGED));
                })
                .all();
    }

    private EyesRead eyes(Laterality right) {
        Optional<Laterality> good = Optional.of(right);
        Optional<Laterality> bad = Optional.of(right.fellow());
        return switch (this) {
            case WRONG_EYE_BY_THE_BOOKING -> new EyesRead(bad, good, good, good);
            case WRONG_EYE_BY_THE_SHEET -> new EyesRead(good, bad, good, good);
            case WRONG_EYE_BY_THE_BIOMETRY -> new EyesRead(good, good, bad, good);
            default -> EyesRead.all(right.fellow());
        };
    }

    private Identity patient(Identity right, Random chance) {
        LocalDate born = right.birthDate().orElseThrow();
        LocalDate other = born.plusDays(1 + chance.nextInt(9000));
        Set<Identity.Number> others = right.numbers().stream()
                .map(each -> new Identity.Number(each.system(), each.value() + chance.nextInt(10)))
                .collect(Collectors.toSet());
        return switch (this) {
            case ANOTHER_PATIENT -> new Identity(others, Optional.of(other));
            case A_NAMESAKE -> new Identity(others, right.birthDate());
            case ONE_IDENTIFIER_MISREAD -> misread(right, chance);
            case NUMBERS_OF_ANOTHER_SYSTEM ->
                new Identity(
                        right.numbers().stream()
                                .map(each -> new Identity.Number(each.system() + ".9", each.value()))
                                .collect(Collectors.toSet()),
                        right.birthDate());
            default -> new Identity(right.numbers(), Optional.of(other));
        };
    }

    private static Identity misread(Identity right, Random chance) {
        String spoilt = right.numbers().stream()
                .map(Identity.Number::system)
                .sorted()
                .toList()
                .get(chance.nextInt(right.numbers().size()));
        return new Identity(
                right.numbers().stream()
                        .map(each -> each.system().equals(spoilt)
                                ? new Identity.Number(each.system(), each.value() + chance.nextInt(10))
                                : each)
                        .collect(Collectors.toSet()),
                right.birthDate());
    }

    private Spoiled lens(Spoiled scan, CheckedLens right, Random chance) {
        double step = STEPS[chance.nextInt(STEPS.length)] * (chance.nextBoolean() ? 1 : -1);
        double power = right.power().value();
        CheckedLens next = new CheckedLens(right.model(), Dioptres.of(power + step), right.cylinder());
        return switch (this) {
            case THE_OTHER_SIGN -> scan.lens(new CheckedLens(right.model(), Dioptres.of(-power), right.cylinder()));
            case ONE_STEP_AWAY -> scan.lens(next);
            case ONE_STEP_AWAY_ON_THE_BOX_ALONE ->
                scan.box(Optional.of(new Carton.BoxRead(next, "Practitioner/nurse-2")));
            case ONE_STEP_AWAY_IN_THE_BANK_ALONE -> scan.bank(Optional.of(Checks.unit(next)));
            default -> scan.lens(new CheckedLens(right.model() + chance.nextInt(10), right.power(), right.cylinder()));
        };
    }

    private static String hex(Random chance) {
        return chance.ints(12, 0, 16).mapToObj(Integer::toHexString).collect(Collectors.joining());
    }
}
