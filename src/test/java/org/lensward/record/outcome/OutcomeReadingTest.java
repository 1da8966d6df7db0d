package org.lensward.record.outcome;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Laterality;
import org.lensward.flow.PolicyFile;
import org.lensward.lens.LensSite;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.Complication;
import org.lensward.outcome.OperatedEye;
import org.lensward.outcome.OperatedEyes;
import org.lensward.outcome.Refraction;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.record.Fhir;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.Unused;

/** Operated eyes read from exports; what was invented is what is read, and what cannot be used is counted with its reason. */
class OutcomeReadingTest {

    private static final FhirContext FHIR = Fhir.r4();

    private final Path folder;

    OutcomeReadingTest(@TempDir Path folder) {
        this.folder = folder;
    }

    private OutcomeReading read(List<String> lines) throws IOException {
        Path file = Files.write(folder.resolve("export.ndjson"), lines);
        return OutcomeReading.ofFiles(FHIR, PolicyFile.shipped().biometry(), List.of(file));
    }

    private OutcomeReading read(InventedEye eye, Fault fault) throws IOException {
        return read(new InventedLines(eye, fault).all().toList());
    }

    private static List<OperatedEye> eyes(OperatedEyes eyes) {
        return IntStream.range(0, eyes.parts()).boxed().flatMap(eyes::part).toList();
    }

    private static OperatedEye only(OutcomeReading reading) {
        List<OperatedEye> all = eyes(reading.eyes());
        assertThat(all).hasSize(1);
        return all.get(0);
    }

    @Test
    void an_eye_is_read_as_it_was_invented() throws IOException {
        InventedEye invented = new InventedEye(8, 1);
        try (OutcomeReading reading = read(invented, Fault.NONE)) {
            OperatedEye eye = only(reading);
            assertThat(reading.unused().counts()).isEmpty();
            assertThat(eye.side()).isEqualTo(invented.side);
            assertThat(eye.operatedOn()).isEqualTo(invented.day);
            assertThat(eye.surgeon()).isEqualTo("Practitioner/surgeon-" + invented.surgeon);
            assertThat(eye.lens().model()).isEqualTo("DeviceDefinition/harbour-60");
            assertThat(eye.lens().power()).isEqualTo(Dioptres.of(invented.power));
            assertThat(eye.lens().site()).contains(LensSite.CAPSULAR_BAG);
            assertThat(eye.before().biometry().orElseThrow().axialLength().value())
                    .isEqualTo(Millimetres.of(Double.parseDouble(String.format("%.4f", invented.length))));
            assertThat(eye.before().constants()).contains(InventedEye.CONSTANTS);
            assertThat(eye.before().predicted()).hasSize(5);
            assertThat(Objects.requireNonNull(eye.before().predicted().get(FormulaName.SRK_T))
                            .value())
                    .isCloseTo(
                            Objects.requireNonNull(invented.predicted.get(FormulaName.SRK_T)),
                            org.assertj.core.data.Offset.offset(5e-5));
            assertThat(eye.before().rupture().orElseThrow().value()).isEqualTo(invented.rupture / 100, within());
            assertThat(eye.after().complicationsTold()).isTrue();
            assertThat(eye.after().refractions()).hasSize(1);
            assertThat(eye.after().opening().orElseThrow().later()).hasSize(1);
            assertThat(eye.keys().patient()).doesNotContain("person");
        }
    }

    private static org.assertj.core.data.Offset<Double> within() {
        return org.assertj.core.data.Offset.offset(1e-9);
    }

    /** Whichever way a cylinder is written, it is the same refraction: sphere and half the cylinder. */
    @Test
    void plus_and_minus_cylinders_are_read_with_their_form() throws IOException {
        for (int number = 0; number < 12; number++) {
            InventedEye invented = new InventedEye(number, 1);
            try (OutcomeReading reading = read(invented, Fault.NONE)) {
                Refraction refraction = only(reading).after().refractions().get(0);
                Refraction.Cylinder cylinder = refraction.cylinder().orElseThrow();
                double signed = cylinder.form() == Refraction.Form.PLUS
                        ? cylinder.power().value()
                        : -cylinder.power().value();
                assertThat(refraction.sphere().value() + signed / 2)
                        .isEqualTo(invented.sphere - invented.cylinder / 2, within());
                assertThat(cylinder.power().value() == 0
                                || (cylinder.form() == Refraction.Form.PLUS) == invented.plusForm)
                        .isTrue();
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Fault.class)
    void what_is_wrong_is_told_or_left_to_the_audit_and_never_guessed(Fault fault) throws IOException {
        try (OutcomeReading reading = read(new InventedEye(4, 1), fault)) {
            Optional<Unused.Reason> expected = Optional.ofNullable(UNUSED.get(fault));
            assertThat(reading.unused().counts().keySet())
                    .isEqualTo(expected.map(java.util.Set::of).orElse(java.util.Set.of()));
            expected.ifPresent(reason -> assertThat(reading.unused().named(reason))
                    .hasSize(1)
                    .allMatch(evidence -> evidence.resource().contains("0000004")));
            assertThat(reading.count()).isEqualTo(NO_EYE.contains(fault) ? 0 : TWO.contains(fault) ? 2 : 1);
        }
    }

    private static final Map<Fault, Unused.Reason> UNUSED = Map.of(
            Fault.REFRACTION_WITHOUT_EYE, Unused.Reason.REFRACTION_WITHOUT_EYE,
            Fault.REFRACTION_OF_BOTH_EYES, Unused.Reason.REFRACTION_OF_TWO_EYES,
            Fault.REFRACTION_WITHOUT_METHOD, Unused.Reason.REFRACTION_METHOD_NOT_TOLD,
            Fault.REFRACTION_IN_CENTIMETRES, Unused.Reason.VALUE_UNREADABLE,
            Fault.REFRACTION_NAMES_ANOTHER_OPERATION, Unused.Reason.REFRACTION_AGAINST_ITS_OPERATION,
            Fault.BIOMETRY_CORRECTED_AFTERWARDS, Unused.Reason.BIOMETRY_CHANGED,
            Fault.OPERATION_WITHOUT_EYE, Unused.Reason.OPERATION_WITHOUT_EYE,
            Fault.LENS_NOT_RECORDED, Unused.Reason.LENS_NOT_RECORDED,
            Fault.LENS_LOST, Unused.Reason.LENS_NOT_THERE,
            Fault.LENS_OF_SOMEBODY_ELSE, Unused.Reason.LENS_OF_ANOTHER_PERSON);

    private static final List<Fault> NO_EYE =
            List.of(Fault.OPERATION_WITHOUT_EYE, Fault.LENS_NOT_RECORDED, Fault.LENS_LOST, Fault.LENS_OF_SOMEBODY_ELSE);

    private static final List<Fault> TWO =
            List.of(Fault.EXCHANGED_BEFORE_REFRACTION, Fault.EXCHANGED_LATER, Fault.TOLD_TWICE);

    @Test
    void a_lens_exchanged_is_known_to_the_first_operation_alone() throws IOException {
        InventedEye invented = new InventedEye(4, 1);
        try (OutcomeReading reading = read(invented, Fault.EXCHANGED_LATER)) {
            assertThat(eyes(reading.eyes()))
                    .extracting(eye -> eye.after().exchangedOn())
                    .containsExactly(Optional.of(invented.day.plusDays(120)), Optional.empty());
        }
    }

    @Test
    void a_lens_that_was_not_planned_has_neither_prediction_nor_constants() throws IOException {
        try (OutcomeReading reading = read(new InventedEye(4, 1), Fault.OTHER_LENS_THAN_PLANNED)) {
            OperatedEye eye = only(reading);
            assertThat(eye.lens().model()).isEqualTo("DeviceDefinition/harbour-60-three");
            assertThat(eye.before().predicted()).isEmpty();
            assertThat(eye.before().constants()).isEmpty();
        }
    }

    @Test
    void a_torn_capsule_is_read() throws IOException {
        try (OutcomeReading reading = read(new InventedEye(4, 1), Fault.CAPSULE_TORN)) {
            assertThat(only(reading).after().complications()).containsExactly(Complication.CAPSULE_RUPTURE);
        }
    }

    /** Numbers 4 and 5 are the eyes of one person. */
    @Test
    void both_eyes_of_one_person_keep_their_own_measurements() throws IOException {
        List<String> lines = Stream.of(4, 5)
                .flatMap(number -> new InventedLines(new InventedEye(number, 1), Fault.NONE).all())
                .toList();
        try (OutcomeReading reading = read(lines)) {
            List<OperatedEye> both = eyes(reading.eyes());
            assertThat(both)
                    .extracting(eye -> eye.keys().patient())
                    .containsOnly(both.get(0).keys().patient());
            assertThat(both).extracting(OperatedEye::side).containsExactlyInAnyOrder(Laterality.RIGHT, Laterality.LEFT);
            assertThat(both)
                    .allMatch(eye -> eye.before().biometry().orElseThrow().eye() == eye.side());
        }
    }

    @Test
    void the_order_of_the_lines_changes_nothing() throws IOException {
        List<String> lines = new ArrayList<>(IntStream.range(0, 40)
                .boxed()
                .flatMap(number -> new InventedLines(new InventedEye(number, 1), Fault.NONE).all())
                .toList());
        List<OperatedEye> first;
        try (OutcomeReading reading = read(lines)) {
            first = eyes(reading.eyes());
        }
        Collections.shuffle(lines, new Random(7));
        try (OutcomeReading reading = read(lines)) {
            assertThat(eyes(reading.eyes())).hasSize(40).isEqualTo(first);
        }
    }

    @Test
    void a_bundle_and_its_lines_are_the_same() throws IOException {
        List<String> lines =
                new InventedLines(new InventedEye(4, 1), Fault.NONE).all().toList();
        OperatedEye ofLines;
        try (OutcomeReading reading = read(lines)) {
            ofLines = only(reading);
        }
        String entries = String.join(
                ",", lines.stream().map(each -> "{\"resource\":" + each + "}").toList());
        try (OutcomeReading reading =
                read(List.of("{\"resourceType\":\"Bundle\",\"type\":\"collection\",\"entry\":[" + entries + "]}"))) {
            assertThat(only(reading)).isEqualTo(ofLines);
        }
    }

    @Test
    void a_broken_line_is_named() {
        assertThatThrownBy(() -> read(List.of("{\"resourceType\":\"Device\",\"id\":\"a\"}", "{\"resourceType\":")))
                .isInstanceOf(UnreadableRecord.class)
                .satisfies(refused ->
                        assertThat(((UnreadableRecord) refused).element()).startsWith("export.ndjson:"));
        assertThatThrownBy(() -> read(List.of("[]"))).isInstanceOf(UnreadableRecord.class);
        assertThatThrownBy(() -> read(List.of("{\"id\":\"a\"}"))).isInstanceOf(UnreadableRecord.class);
    }
}
