package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.EyeSurgery;
import org.lensward.eye.Histories;
import org.lensward.eye.History;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.OtherReadings;
import org.lensward.eye.Person;
import org.lensward.eye.Sex;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.lens.Catalogue;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensPolicy;
import org.lensward.lens.Lenses;
import org.lensward.quantity.Dioptres;

/** A booking for tests: ready to be planned unless a test says otherwise. */
record Cases(PlanningCase booked) {

    static final LocalDate OPERATION = LocalDate.of(2026, 3, 16);
    static final Evidence BOOKING = new Evidence("ServiceRequest/b1", "1", "");
    static final Evidence PATIENT = new Evidence("Patient/p1", "1", "");

    static EyePlan plan(Cases given, LensPolicy lens) {
        return new Planner(WholePolicy.with(lens)).plan(given.booked());
    }

    static EyePlan plan(Cases given) {
        return new Planner(WholePolicy.standard()).plan(given.booked());
    }

    /** The plan's one finding of that kind; that there are not two is checked. */
    static Optional<Finding> find(EyePlan plan, FindingCode code) {
        List<Finding> all = plan.findings().stream()
                .filter(finding -> finding.code() == code)
                .toList();
        assertThat(all).hasSizeLessThanOrEqualTo(1);
        return all.stream().findFirst();
    }

    static Optional<Finding> find(Cases given, FindingCode code) {
        return find(plan(given), code);
    }

    /** A woman of 66, both eyes alike, a target, and a lens for every site. */
    static Cases ordinary() {
        Specimen right = Specimen.ordinary(Laterality.RIGHT, OPERATION.minusMonths(1))
                .powers(43, 43.25)
                .depth(3.1);
        Biometry left = Specimen.ordinary(Laterality.LEFT, OPERATION.minusMonths(1))
                .powers(43, 43.25)
                .biometry();
        return new Cases(new PlanningCase(
                new Booking(
                        BOOKING,
                        Optional.of(Laterality.RIGHT),
                        Optional.of(OPERATION),
                        Optional.of(new Measured<>(Dioptres.of(-0.25), BOOKING.at("extension"))),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                new Person(PATIENT, Optional.of(LocalDate.of(1960, 1, 31)), Sex.FEMALE, List.of()),
                Optional.of(eye(right.biometry())),
                Optional.of(eye(fellows(left))),
                Lenses.catalogue(),
                List.of(),
                List.of()));
    }

    private static Eye eye(Biometry biometry) {
        return new Eye(
                biometry.eye(),
                Optional.of(biometry),
                new History(List.of()),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    /** The fellow's measurements are resources of their own. */
    private static Biometry fellows(Biometry left) {
        return new Biometry(
                left.eye(),
                left.method(),
                left.measuredOn(),
                new Measured<>(left.axialLength().value(), new Evidence("Observation/fellow-length", "1", "value")),
                new Measured<>(left.keratometry().value(), new Evidence("Observation/fellow-cornea", "1", "component")),
                left.details());
    }

    Cases measured(Function<Specimen, Specimen> change) {
        Eye eye = booked.eye().orElseThrow();
        Specimen specimen = new Specimen(eye.biometry().orElseThrow(), eye.surgery(), eye.surprise());
        return eye(new Eye(
                eye.side(),
                Optional.of(change.apply(specimen).biometry()),
                eye.history(),
                eye.surgery(),
                eye.pupil(),
                eye.surprise(),
                eye.other()));
    }

    Cases unmeasured() {
        Eye eye = booked.eye().orElseThrow();
        return eye(new Eye(eye.side(), Optional.empty(), eye.history(), eye.surgery(), eye.pupil(), eye.surprise()));
    }

    Cases signs(Sign... present) {
        Eye eye = booked.eye().orElseThrow();
        return eye(new Eye(
                eye.side(),
                eye.biometry(),
                Histories.of(present),
                eye.surgery(),
                eye.pupil(),
                eye.surprise(),
                eye.other()));
    }

    Cases allergicTo(Set<Allergen> substances, boolean severe) {
        Person person = booked.person();
        List<Allergy> allergies = substances.stream()
                .map(each -> new Allergy(
                        Set.of(each),
                        severe,
                        each.toString(),
                        new Evidence("AllergyIntolerance/" + each.name(), "1", "code")))
                .sorted(Comparator.comparing(Allergy::evidence))
                .toList();
        return with(
                booked.booking(),
                new Person(person.evidence(), person.birthDate(), person.sex(), allergies),
                booked.eye(),
                booked.catalogue(),
                booked.found());
    }

    Cases operatedOn(LocalDate day) {
        Eye eye = booked.eye().orElseThrow();
        EyeSurgery surgery = new EyeSurgery("trabeculectomy", Optional.of(day), Specimen.OPERATION);
        return eye(new Eye(eye.side(), eye.biometry(), eye.history(), List.of(surgery), eye.pupil(), eye.surprise()));
    }

    /** What else was recorded of the eye. */
    Cases recorded(OtherReadings other) {
        Eye eye = booked.eye().orElseThrow();
        return eye(with(eye, eye.surprise(), other));
    }

    /** The fellow's refraction now, and how far it ended from its prediction, where that is known. */
    Cases fellow(double refraction, Optional<Measured<Dioptres>> surprise) {
        Measured<Dioptres> now = new Measured<>(Dioptres.of(refraction), Specimen.REFRACTION);
        Eye fellow = with(
                booked.fellow().orElseThrow(),
                surprise,
                new OtherReadings(Optional.of(now), Optional.empty(), List.of()));
        return new Cases(new PlanningCase(
                booked.booking(),
                booked.person(),
                booked.eye(),
                Optional.of(fellow),
                booked.catalogue(),
                booked.also(),
                booked.found()));
    }

    private static Eye with(Eye eye, Optional<Measured<Dioptres>> surprise, OtherReadings other) {
        return new Eye(eye.side(), eye.biometry(), eye.history(), eye.surgery(), eye.pupil(), surprise, other);
    }

    private Cases eye(Eye eye) {
        return with(booked.booking(), booked.person(), Optional.of(eye), booked.catalogue(), booked.found());
    }

    Cases withoutTarget() {
        Booking old = booked.booking();
        return booking(new Booking(
                old.evidence(),
                old.eye(),
                old.operation(),
                Optional.empty(),
                old.lensModel(),
                old.surgeon(),
                old.surgeonName()));
    }

    Cases aimingAt(double target) {
        Booking old = booked.booking();
        return booking(new Booking(
                old.evidence(),
                old.eye(),
                old.operation(),
                Optional.of(new Measured<>(Dioptres.of(target), BOOKING.at("extension"))),
                old.lensModel(),
                old.surgeon(),
                old.surgeonName()));
    }

    Cases surgeon(String name) {
        Booking old = booked.booking();
        return booking(new Booking(
                old.evidence(),
                old.eye(),
                old.operation(),
                old.target(),
                old.lensModel(),
                old.surgeon(),
                Optional.of(name)));
    }

    Cases naming(String lensModel) {
        Booking old = booked.booking();
        return booking(new Booking(
                old.evidence(),
                old.eye(),
                old.operation(),
                old.target(),
                Optional.of(new Measured<>(lensModel, BOOKING.at("supportingInfo"))),
                old.surgeon(),
                old.surgeonName()));
    }

    private Cases booking(Booking booking) {
        return with(booking, booked.person(), booked.eye(), booked.catalogue(), booked.found());
    }

    Cases catalogue(LensModel... models) {
        return with(booked.booking(), booked.person(), booked.eye(), new Catalogue(List.of(models)), booked.found());
    }

    Cases found(Finding... more) {
        List<Finding> all = new ArrayList<>(booked.found());
        all.addAll(List.of(more));
        return with(booked.booking(), booked.person(), booked.eye(), booked.catalogue(), all);
    }

    /** What reading leaves of a booking that names no single eye. */
    Cases withoutEye() {
        Booking old = booked.booking();
        Booking eyeless = new Booking(
                old.evidence(),
                Optional.empty(),
                old.operation(),
                old.target(),
                old.lensModel(),
                old.surgeon(),
                old.surgeonName());
        return new Cases(new PlanningCase(
                eyeless,
                booked.person(),
                Optional.empty(),
                Optional.empty(),
                booked.catalogue(),
                booked.also(),
                booked.found()));
    }

    Cases also(Evidence... more) {
        return new Cases(new PlanningCase(
                booked.booking(),
                booked.person(),
                booked.eye(),
                booked.fellow(),
                booked.catalogue(),
                List.of(more),
                booked.found()));
    }

    private Cases with(Booking booking, Person person, Optional<Eye> eye, Catalogue catalogue, List<Finding> found) {
        return new Cases(new PlanningCase(booking, person, eye, booked.fellow(), catalogue, booked.also(), found));
    }
}
