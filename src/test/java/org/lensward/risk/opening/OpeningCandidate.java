package org.lensward.risk.opening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.eye.Examination;
import org.lensward.eye.Eye;
import org.lensward.eye.Histories;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.Person;
import org.lensward.eye.Sex;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.lens.Focus;
import org.lensward.lens.LensDesign;
import org.lensward.lens.LensModel;
import org.lensward.lens.Lenses;
import org.lensward.lens.OpticMaterial;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** An eye of which every sign is denied, its pupil wide, for a hydrophobic monofocal lens of 6 mm, unless a test says otherwise. */
final class OpeningCandidate {

    private final Map<Sign, Boolean> signs = new EnumMap<>(Sign.class);
    private final List<Allergy> allergies = new ArrayList<>();
    private Laterality side = Laterality.RIGHT;
    private Optional<Double> pupil = Optional.of(8.0);
    private Optional<Double> zonuleLoss = Optional.empty();
    private Optional<Double> diameter = Optional.empty();
    private Optional<Double> decentration = Optional.empty();
    private Optional<Double> optic = Optional.of(6.0);
    private Optional<OpticMaterial> material = Optional.of(OpticMaterial.HYDROPHOBIC_ACRYLIC);
    private Optional<Focus> focus = Optional.of(Focus.MONOFOCAL);
    private List<Dioptres> cylinders = List.of();

    static OpeningCandidate reference() {
        OpeningCandidate reference = new OpeningCandidate();
        Arrays.stream(Sign.values()).forEach(sign -> reference.signs.put(sign, false));
        return reference;
    }

    OpeningCandidate with(Sign... present) {
        Arrays.stream(present).forEach(sign -> signs.put(sign, true));
        return this;
    }

    OpeningCandidate silentAbout(Sign... unknown) {
        Arrays.stream(unknown).forEach(signs::remove);
        return this;
    }

    /** The record says nothing at all of the eye. */
    OpeningCandidate unexamined() {
        signs.clear();
        pupil = Optional.empty();
        return this;
    }

    OpeningCandidate side(Laterality other) {
        side = other;
        return this;
    }

    OpeningCandidate allergicTo(Allergen... substances) {
        Arrays.stream(substances).forEach(each -> allergy(Set.of(each), each.toString()));
        return this;
    }

    OpeningCandidate allergicToSomething(String words) {
        return allergy(Set.of(), words);
    }

    private OpeningCandidate allergy(Set<Allergen> to, String words) {
        allergies.add(
                new Allergy(to, false, words, new Evidence("AllergyIntolerance/" + allergies.size(), "1", "code")));
        return this;
    }

    OpeningCandidate pupil(double millimetres) {
        pupil = Optional.of(millimetres);
        return this;
    }

    OpeningCandidate withoutPupil() {
        pupil = Optional.empty();
        return this;
    }

    OpeningCandidate zonuleLoss(double hours) {
        zonuleLoss = Optional.of(hours);
        return this;
    }

    OpeningCandidate opened(double wide, double offCentre) {
        diameter = Optional.of(wide);
        decentration = Optional.of(offCentre);
        return this;
    }

    OpeningCandidate opened(double wide) {
        diameter = Optional.of(wide);
        return this;
    }

    OpeningCandidate optic(double millimetres) {
        optic = Optional.of(millimetres);
        return this;
    }

    OpeningCandidate withoutOptic() {
        optic = Optional.empty();
        return this;
    }

    OpeningCandidate material(OpticMaterial other) {
        material = Optional.of(other);
        return this;
    }

    OpeningCandidate focus(Focus other) {
        focus = Optional.of(other);
        return this;
    }

    OpeningCandidate designUnknown() {
        material = Optional.empty();
        focus = Optional.empty();
        return this;
    }

    OpeningCandidate toric() {
        cylinders = List.of(Dioptres.of(1.5));
        return this;
    }

    Person person() {
        return new Person(new Evidence("Patient/p1", "1", ""), Optional.empty(), Sex.FEMALE, allergies);
    }

    Eye eye() {
        return new Eye(
                        side,
                        Optional.empty(),
                        Histories.of(signs),
                        List.of(),
                        pupil.map(each -> millimetres("pupil", each)),
                        Optional.empty())
                .examined(new Examination(
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        zonuleLoss.map(each ->
                                new Measured<>(PureNumber.of(each), new Evidence("Observation/zonules", "1", "value"))),
                        Optional.empty(),
                        diameter.map(each -> millimetres("opening", each)),
                        decentration.map(each -> millimetres("off-centre", each))));
    }

    private static Measured<Millimetres> millimetres(String id, double value) {
        return new Measured<>(Millimetres.of(value), new Evidence("Observation/" + id, "1", "value"));
    }

    LensModel lens() {
        LensModel bag = Lenses.bag();
        return new LensModel(
                bag.evidence(),
                bag.name(),
                bag.site(),
                bag.houseLens(),
                optic.map(Millimetres::of),
                bag.ranges(),
                cylinders,
                bag.constants(),
                new LensDesign(focus, material, Optional.empty()));
    }

    OpeningPlan plan(OpeningPolicy policy) {
        return new OpeningPlanner(policy).plan(person(), eye(), lens());
    }

    OpeningPlan plan() {
        return plan(Openings.policy());
    }

    Optional<OpeningJudgement> judge(OpeningTechnique technique) {
        return new OpeningReview(Openings.policy()).judge(eye(), lens(), technique);
    }

    static List<FindingCode> codes(List<Finding> findings) {
        return findings.stream().map(Finding::code).toList();
    }

    static String message(List<Finding> findings, FindingCode code) {
        return findings.stream()
                .filter(each -> each.code() == code)
                .map(Finding::message)
                .findFirst()
                .orElseThrow();
    }
}
