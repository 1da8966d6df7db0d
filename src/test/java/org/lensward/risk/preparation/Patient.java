package org.lensward.risk.preparation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.eye.Eye;
import org.lensward.eye.Histories;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.OtherReadings;
import org.lensward.eye.Person;
import org.lensward.eye.Sex;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Evidence;
import org.lensward.lens.LensModel;
import org.lensward.quantity.Millimetres;

/** Someone about to be operated on, of whom everything is known and nothing is amiss, unless a test says otherwise. */
record Patient(
        Map<Sign, Boolean> signs,
        List<Allergy> allergies,
        Optional<Integer> age,
        Optional<Specimen> measured,
        Optional<Double> pupil,
        Examined examined) {

    static final LocalDate OPERATION = LocalDate.of(2026, 3, 16);
    static final Evidence PERSON = new Evidence("Patient/p1", "1", "");

    static Patient ordinary() {
        Map<Sign, Boolean> denied = new EnumMap<>(Sign.class);
        Arrays.stream(Sign.values()).forEach(sign -> denied.put(sign, false));
        return new Patient(
                denied,
                List.of(),
                Optional.of(72),
                Optional.of(Specimen.ordinary(Laterality.RIGHT, OPERATION).depth(3.2)),
                Optional.of(8.0),
                Examined.ordinary());
    }

    /** Nothing at all is recorded. */
    static Patient unknown() {
        return new Patient(
                Map.of(), List.of(), Optional.empty(), Optional.empty(), Optional.empty(), Examined.nothing());
    }

    Patient with(Sign... present) {
        return mention(true, present);
    }

    Patient without(Sign... absent) {
        return mention(false, absent);
    }

    private Patient mention(boolean present, Sign... mentioned) {
        Map<Sign, Boolean> more = new EnumMap<>(Sign.class);
        more.putAll(signs);
        Arrays.stream(mentioned).forEach(sign -> more.put(sign, present));
        return new Patient(more, allergies, age, measured, pupil, examined);
    }

    Patient silentAbout(Sign... unknown) {
        Map<Sign, Boolean> fewer = new EnumMap<>(Sign.class);
        fewer.putAll(signs);
        Arrays.stream(unknown).forEach(fewer::remove);
        return new Patient(fewer, allergies, age, measured, pupil, examined);
    }

    Patient allergicTo(Allergen substance) {
        return allergic(Set.of(substance), false, substance.toString());
    }

    Patient severelyAllergicTo(Allergen substance) {
        return allergic(Set.of(substance), true, substance.toString());
    }

    Patient allergic(Set<Allergen> to, boolean severe, String words) {
        List<Allergy> more = new ArrayList<>(allergies);
        Evidence where = new Evidence("AllergyIntolerance/" + allergies.size(), "1", "code");
        more.add(new Allergy(to, severe, words, where));
        return new Patient(signs, more, age, measured, pupil, examined);
    }

    Patient age(int years) {
        return new Patient(signs, allergies, Optional.of(years), measured, pupil, examined);
    }

    Patient measured(Specimen specimen) {
        return new Patient(signs, allergies, age, Optional.of(specimen), pupil, examined);
    }

    Patient unmeasured() {
        return new Patient(signs, allergies, age, Optional.empty(), pupil, examined);
    }

    Patient length(double millimetres) {
        return measured(measured.orElseThrow().length(millimetres));
    }

    Patient depth(double millimetres) {
        return measured(measured.orElseThrow().depth(millimetres));
    }

    Patient pupil(double millimetres) {
        return new Patient(signs, allergies, age, measured, Optional.of(millimetres), examined);
    }

    Patient examined(Examined other) {
        return new Patient(signs, allergies, age, measured, pupil, other);
    }

    Person person() {
        return new Person(PERSON, age.map(OPERATION::minusYears), Sex.FEMALE, allergies);
    }

    Eye eye() {
        return eye(OtherReadings.none());
    }

    Eye eye(OtherReadings other) {
        return new Eye(
                Laterality.RIGHT,
                measured.map(Specimen::biometry),
                Histories.of(signs),
                List.of(),
                pupil.map(
                        each -> new Measured<>(Millimetres.of(each), new Evidence("Observation/pupil", "1", "value"))),
                Optional.empty(),
                other,
                examined.examination());
    }

    Facts facts() {
        return new Facts(person(), eye(), OPERATION);
    }

    Preparation prepared() {
        return prepared(Preparations.policy());
    }

    Preparation prepared(PreparationPolicy policy) {
        return new PreparationPlanner(policy).plan(person(), eye(), OPERATION, Optional.empty());
    }

    Preparation prepared(LensModel planned) {
        return new PreparationPlanner(Preparations.policy()).plan(person(), eye(), OPERATION, Optional.of(planned));
    }

    /** The only precaution on that topic, if there is one. */
    Optional<Precaution> on(Topic topic) {
        List<Precaution> found = prepared().precautions().stream()
                .filter(each -> each.topic() == topic)
                .toList();
        if (found.size() > 1) {
            throw new AssertionError("Two precautions on " + topic + ": " + found);
        }
        return found.stream().findFirst();
    }

    Precaution precaution(Topic topic) {
        return on(topic).orElseThrow(() -> new AssertionError("Nothing on " + topic));
    }
}
