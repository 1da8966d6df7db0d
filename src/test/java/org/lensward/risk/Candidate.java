package org.lensward.risk;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lensward.eye.Allergy;
import org.lensward.eye.Biometry;
import org.lensward.eye.Examination;
import org.lensward.eye.Eye;
import org.lensward.eye.Histories;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.Person;
import org.lensward.eye.Sex;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Evidence;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.PureNumber;

/** Someone about to be operated on, of whom everything is known: the reference of the model unless a test says otherwise. */
public record Candidate(
        Laterality side,
        Optional<Integer> age,
        Sex sex,
        Map<Sign, Boolean> signs,
        Optional<Double> pupil,
        Optional<Double> length,
        Optional<SurgeonGrade> surgeon,
        List<String> allergies,
        Examination examination) {

    public static final LocalDate OPERATION = LocalDate.of(2026, 3, 16);
    static final Evidence PATIENT = new Evidence("Patient/p1", "1", "");
    private static final Evidence PUPIL = new Evidence("Observation/pupil", "1", "value");
    private static final Evidence PRESSURE = new Evidence("Observation/pressure", "1", "value");
    private static final Evidence DENSITY = new Evidence("Observation/density", "1", "value");
    private static final Evidence THICKNESS = new Evidence("Observation/thickness", "1", "value");
    private static final Evidence ZONULES = new Evidence("Observation/zonules", "1", "value");
    private static final Evidence GRADE = new Evidence("ServiceRequest/b1", "1", "performerType");

    /** A woman of 58 with a large pupil and no sign, operated on by a consultant. */
    public static Candidate reference() {
        Map<Sign, Boolean> denied = new EnumMap<>(Sign.class);
        Arrays.stream(Sign.values()).forEach(sign -> denied.put(sign, false));
        return new Candidate(
                Laterality.RIGHT,
                Optional.of(58),
                Sex.FEMALE,
                denied,
                Optional.of(8.0),
                Optional.of(23.5),
                Optional.of(SurgeonGrade.CONSULTANT),
                List.of(),
                examined());
    }

    /** An eye with nothing remarkable in its chart. */
    private static Examination examined() {
        return new Examination(
                Optional.of(new Measured<>(MillimetresOfMercury.of(15), PRESSURE)),
                Optional.of(new Measured<>(CellsPerSquareMillimetre.of(2500), DENSITY)),
                Optional.of(new Measured<>(Millimetres.of(0.54), THICKNESS)),
                Optional.of(new Measured<>(PureNumber.of(0), ZONULES)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    public Candidate pressure(double mercury) {
        return examined(new Examination(
                Optional.of(new Measured<>(MillimetresOfMercury.of(mercury), PRESSURE)),
                examination.endothelialDensity(),
                examination.cornealThickness(),
                examination.zonuleLoss(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    }

    public Candidate endothelium(double density, double thickness) {
        return examined(new Examination(
                examination.pressure(),
                Optional.of(new Measured<>(CellsPerSquareMillimetre.of(density), DENSITY)),
                Optional.of(new Measured<>(Millimetres.of(thickness), THICKNESS)),
                examination.zonuleLoss(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    }

    public Candidate zonuleLoss(double clockHours) {
        return examined(new Examination(
                examination.pressure(),
                examination.endothelialDensity(),
                examination.cornealThickness(),
                Optional.of(new Measured<>(PureNumber.of(clockHours), ZONULES)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    }

    public Candidate examined(Examination other) {
        return new Candidate(side, age, sex, signs, pupil, length, surgeon, allergies, other);
    }

    public Candidate side(Laterality other) {
        return new Candidate(other, age, sex, signs, pupil, length, surgeon, allergies, examination);
    }

    public Candidate age(int years) {
        return new Candidate(side, Optional.of(years), sex, signs, pupil, length, surgeon, allergies, examination);
    }

    /** Nothing at all is recorded. */
    public Candidate unknown() {
        return new Candidate(
                side,
                Optional.empty(),
                Sex.UNKNOWN,
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                allergies,
                Examination.none());
    }

    Candidate sex(Sex other) {
        return new Candidate(side, age, other, signs, pupil, length, surgeon, allergies, examination);
    }

    public Candidate with(Sign... present) {
        Map<Sign, Boolean> more = new EnumMap<>(signs);
        Arrays.stream(present).forEach(sign -> more.put(sign, true));
        return new Candidate(side, age, sex, more, pupil, length, surgeon, allergies, examination);
    }

    public Candidate silentAbout(Sign... unknown) {
        Map<Sign, Boolean> fewer = new EnumMap<>(signs);
        Arrays.stream(unknown).forEach(fewer::remove);
        return new Candidate(side, age, sex, fewer, pupil, length, surgeon, allergies, examination);
    }

    Candidate pupil(double millimetres) {
        return new Candidate(side, age, sex, signs, Optional.of(millimetres), length, surgeon, allergies, examination);
    }

    public Candidate withoutPupil() {
        return new Candidate(side, age, sex, signs, Optional.empty(), length, surgeon, allergies, examination);
    }

    public Candidate length(double millimetres) {
        return new Candidate(side, age, sex, signs, pupil, Optional.of(millimetres), surgeon, allergies, examination);
    }

    Candidate surgeon(SurgeonGrade grade) {
        return new Candidate(side, age, sex, signs, pupil, length, Optional.of(grade), allergies, examination);
    }

    Candidate withoutSurgeon() {
        return new Candidate(side, age, sex, signs, pupil, length, Optional.empty(), allergies, examination);
    }

    public Candidate allergicTo(String... substances) {
        return new Candidate(side, age, sex, signs, pupil, length, surgeon, List.of(substances), examination);
    }

    public Person person() {
        return new Person(
                PATIENT,
                age.map(OPERATION::minusYears),
                sex,
                allergies.stream()
                        .map(each -> new Allergy(
                                Set.of(), false, each, new Evidence("AllergyIntolerance/" + each, "1", "code")))
                        .toList());
    }

    public Eye eye() {
        Optional<Biometry> biometry = length.map(
                each -> Specimen.ordinary(side, OPERATION).length(each).biometry());
        return new Eye(
                        side,
                        biometry,
                        Histories.of(signs),
                        List.of(),
                        pupil.map(each -> new Measured<>(Millimetres.of(each), PUPIL)),
                        Optional.empty())
                .examined(examination);
    }

    public RuptureRisk risk() {
        return new RuptureModel(Risks.policy())
                .assess(person(), eye(), OPERATION, surgeon.map(grade -> new Measured<>(grade, GRADE)));
    }

    double odds() {
        return risk().oddsRatio().value();
    }
}
