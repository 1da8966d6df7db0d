package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.Task;
import org.lensward.plan.PlanState;

/** What holds of whatever is written, for any booking and any fault of the record. */
class PlanWritingLaws {

    /** FHIR R4 2.24.0.1, data type id. */
    private static final String ID = "[A-Za-z0-9\\-.]{1,64}";

    /** One thing wrong, or merely different, with a record. */
    enum Fault {
        EYELESS_BOOKING(record -> record.booking(each -> each.getBodySite().clear())),
        DATELESS_BOOKING(record -> record.booking(each -> each.setOccurrence(null))),
        TARGETLESS_BOOKING(record -> record.booking(each -> each.getExtension().clear())),
        UNKNOWN_LENS(record -> record.booking(each -> each.addSupportingInfo(new Reference("DeviceDefinition/x")))),
        SIDELESS_LENGTH(record -> length(record, each -> each.setBodySite(new CodeableConcept()))),
        DATELESS_LENGTH(record -> length(record, each -> each.setEffective(null))),
        LENGTH_IN_INCHES(record -> length(record, each -> each.setValue(Bundles.quantity("0.93", "[in_i]")))),
        METHODLESS_LENGTH(record -> length(record, each -> each.setMethod(new CodeableConcept()))),
        LONG_EYE(record -> length(record, each -> each.setValue(Bundles.quantity("29.50", "mm")))),
        SHORT_EYE(record -> length(record, each -> each.setValue(Bundles.quantity("20.90", "mm")))),
        NO_CORNEA(record -> record.remove("Observation/cornea-right")),
        NO_FELLOW(record -> record.remove("Observation/length-left")),
        NO_SULCUS_LENS(record -> record.remove("DeviceDefinition/sulcus")),
        NO_LENS(record -> record.remove("DeviceDefinition/bag")),
        LASERED(record -> condition(record, "laser", "cornea-reshaped")),
        GLAUCOMA(record -> condition(record, "glaucoma", "glaucoma")),
        OIL(record -> condition(record, "oil", "silicone-oil"));

        private final Consumer<Bundles> done;

        Fault(Consumer<Bundles> done) {
            this.done = done;
        }

        private static void length(Bundles record, Consumer<Observation> change) {
            record.change(Observation.class, "length-right", change);
        }

        private static void condition(Bundles record, String id, String sign) {
            Condition condition =
                    new Condition().setSubject(Bundles.PATIENT.copy()).setCode(Bundles.ours("sign", sign));
            condition.addBodySite(Bundles.snomed("1290032005"));
            condition.setId(id);
            record.add(condition);
        }
    }

    @Provide
    Arbitrary<List<Fault>> faults() {
        return Arbitraries.of(Fault.class).list().uniqueElements().ofMaxSize(4).withoutEdgeCases();
    }

    /** Server ids of every kind: FHIR's characters up to 64, and urns. */
    @Provide
    Arbitrary<String> bookingIds() {
        Arbitrary<String> plain = Arbitraries.strings()
                .withCharRange('a', 'z')
                .withCharRange('A', 'Z')
                .numeric()
                .withChars("-.")
                .ofMinLength(1)
                .ofMaxLength(64);
        Arbitrary<String> urn = Arbitraries.create(() -> "")
                .flatMap(none ->
                        Arbitraries.strings().withChars("0123456789abcdef").ofLength(32))
                .map(hex -> "urn:uuid:" + hex.replaceFirst("(.{8})(.{4})(.{4})(.{4})(.{12})", "$1-$2-$3-$4-$5"));
        return Arbitraries.oneOf(plain, urn);
    }

    private static Bundles record(List<Fault> faults) {
        Bundles record = Bundles.ordinary();
        faults.forEach(fault -> fault.done.accept(record));
        return record;
    }

    private static Stream<Resource> resources(Bundle bundle) {
        return bundle.getEntry().stream().map(Bundle.BundleEntryComponent::getResource);
    }

    @Property(tries = 40)
    void a_withheld_plan_never_asks_for_a_lens_or_a_check_and_any_other_asks_for_both(
            @ForAll("faults") List<Fault> faults) {
        Bundles record = record(faults);
        Bundle written = Publishing.written(Publishing.publish(record));
        boolean lens = record.plan().state() != PlanState.WITHHELD;
        assertThat(Publishing.all(written, DeviceRequest.class).count() > 0).isEqualTo(lens);
        assertThat(Publishing.all(written, Task.class).count()).isEqualTo(lens ? 1 : 0);
    }

    @Property(tries = 40)
    void ready_or_withheld_once_written_it_is_not_written_again(@ForAll("faults") List<Fault> faults) {
        Bundles record = Publishing.published(record(faults));
        assertThat(Publishing.publish(record)).isEqualTo(new Publication.Nothing(Publication.Reason.UNCHANGED));
    }

    @Property(tries = 15)
    void the_order_of_the_record_never_matters(@ForAll("faults") List<Fault> faults, @ForAll long seed) {
        Bundles record = record(faults);
        assertThat(Publishing.json(Publishing.written(Publishing.publish(record.shuffled(seed)))))
                .isEqualTo(Publishing.json(Publishing.written(Publishing.publish(record))));
    }

    @Property(tries = 40)
    void after_any_change_nothing_of_the_earlier_plan_is_left_standing(
            @ForAll("faults") List<Fault> before, @ForAll("faults") List<Fault> after) {
        Bundles record = Publishing.published(record(before));
        after.stream().filter(fault -> !before.contains(fault)).forEach(fault -> fault.done.accept(record));
        Publication publication = Publishing.publish(record);
        if (publication instanceof Publication.Write) {
            Publishing.taken(record, publication);
        }
        boolean lens = record.plan().state() != PlanState.WITHHELD;
        assertThat(record.all().stream()
                        .filter(DeviceRequest.class::isInstance)
                        .map(DeviceRequest.class::cast)
                        .anyMatch(each -> each.getStatus() == DeviceRequest.DeviceRequestStatus.ACTIVE))
                .isEqualTo(lens);
        assertThat(record.all().stream()
                        .filter(Task.class::isInstance)
                        .map(Task.class::cast)
                        .filter(each -> each.getStatus() == Task.TaskStatus.REQUESTED))
                .hasSize(lens ? 1 : 0);
    }

    @Property(tries = 25)
    void every_id_is_a_fhir_id_whatever_the_bookings(
            @ForAll("bookingIds") String id, @ForAll("faults") List<Fault> faults) {
        Bundles record = record(faults);
        record.request().setId(id);
        Bundle written = Publishing.written(Publishing.publish(record));
        assertThat(resources(written)).allSatisfy(each -> {
            assertThat(each.getIdElement().getIdPart()).matches(ID);
            assertThat(ReferenceTargets.misdirected(each))
                    .filteredOn(line -> !line.contains("urn:uuid:"))
                    .isEmpty();
        });
        assertThat(Publishing.urls(written)).doesNotHaveDuplicates();
    }

    @Property
    void two_bookings_never_share_a_key(@ForAll("bookingIds") String one, @ForAll("bookingIds") String other) {
        boolean same = PlanKey.of(one).equals(PlanKey.of(other));
        assertThat(same).isEqualTo(one.equals(other));
        assertThat(PlanKey.of(one).value()).matches("[A-Za-z0-9\\-.]{1,24}");
    }
}
