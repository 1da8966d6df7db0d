package org.lensward.record;

import static org.lensward.record.MeasurementCode.OPENING_DECENTRATION;
import static org.lensward.record.MeasurementCode.OPENING_DIAMETER;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryChoice;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.outcome.Opening;
import org.lensward.quantity.Millimetres;

/** What the record says of one person's eyes, read as planning reads it, for those who look back. */
public final class EyeRecord {

    private final EyeCodes eyeCodes;
    private final List<MeasurementGroup> groups;

    /**
     * What a shelf holds of one person.
     *
     * @param patient such as {@code Patient/p1}; the resource itself need not be there
     */
    public EyeRecord(Shelf shelf, Evidences evidences, String patient) {
        Patient person = new Patient();
        person.setId(patient);
        this.eyeCodes = new EyeCodes(shelf);
        this.groups = new MeasurementGroups(shelf, evidences).of(person);
    }

    /** The eyes that a code and its body sites name together. */
    public Set<Laterality> eyes(CodeableConcept code, List<CodeableConcept> bodySites) {
        return eyeCodes.eyes(code, bodySites);
    }

    /** Every refraction; what cannot be used goes among the unused. */
    public List<RecordedRefraction> refractions(List<Unused> unused) {
        return RefractionReader.read(groups, unused);
    }

    /**
     * The biometry an operation was planned by: of the Observations the plan names, or else of all up to that day.
     *
     * @param until the day of the operation
     * @param named the plan's Observations, such as {@code Observation/o1}; none where no plan is recorded
     */
    public Outcome<Biometry> biometry(BiometryChoice choice, Laterality eye, LocalDate until, Set<String> named) {
        List<MeasurementGroup> own = groups.stream()
                .filter(group -> named.isEmpty()
                        ? group.day().filter(day -> !day.isAfter(until)).isPresent()
                        : named.contains(group.evidence().resource()))
                .toList();
        return choice.choose(
                eye, MeasurementReader.read(own, eye, until).readings(), new Evidence("Observation", "", ""));
    }

    /** Every measurement of the opening of that eye's capsule. */
    public List<Opening.Seen> openings(Laterality eye) {
        ScalarReader scalars = new ScalarReader(new ArrayList<Finding>());
        return groups.stream()
                .filter(group -> group.eyes().equals(Set.of(eye)))
                .flatMap(group -> group.day().stream().flatMap(day -> scalars.read(group, OPENING_DIAMETER).stream()
                        .map(diameter -> seen(day, diameter, decentration(scalars, group, day, eye)))))
                .toList();
    }

    private static Opening.Seen seen(LocalDate day, Measured<Double> diameter, Optional<Millimetres> off) {
        return new Opening.Seen(day, Millimetres.of(diameter.value()), off);
    }

    private Optional<Millimetres> decentration(
            ScalarReader scalars, MeasurementGroup group, LocalDate day, Laterality eye) {
        return Stream.concat(
                        Stream.of(group),
                        groups.stream()
                                .filter(each -> each.eyes().equals(Set.of(eye)))
                                .filter(each -> each.day().filter(day::equals).isPresent()))
                .flatMap(each -> scalars.read(each, OPENING_DECENTRATION).stream())
                .findFirst()
                .map(each -> Millimetres.of(each.value()));
    }
}
