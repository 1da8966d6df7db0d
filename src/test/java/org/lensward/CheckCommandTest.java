package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DecimalType;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.record.Fhir;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Shelf;

/** The lens check of one booking from the command line, on the demo's files. */
class CheckCommandTest {

    private static final FhirContext FHIR = Fhir.r4();
    private static final String SURGEON = "The surgeon";
    private static final String ORDINARY = "demo-data/an-ordinary-eye/in.json";
    private static final String BANK = "demo-data/lens-bank.json";

    /** GS1 element string of a carton in the demo's bank, a Harbour 60 of 22 D. */
    private static final String RIGHT = "(01)09521234000013(17)270228(10)HB62702(21)70107";

    /** A Harbour 60 of 23.5 D. */
    private static final String STRONGER = "(01)09521234000013(17)270331(10)HB62703(21)70163";

    private final Path folder;

    CheckCommandTest(@TempDir Path folder) {
        this.folder = folder;
    }

    private static Bundle bundle(Terminal seen) {
        return FHIR.newJsonParser().parseResource(Bundle.class, seen.out());
    }

    private static Task task(Terminal seen) {
        return new Shelf(bundle(seen)).all(Task.class).findFirst().orElseThrow();
    }

    private static String state(Terminal seen) {
        return task(seen).getBusinessStatus().getCodingFirstRep().getCode();
    }

    private static String fingerprint(Terminal confirmed) {
        String id = task(confirmed).getIdElement().getIdPart();
        return id.substring(id.lastIndexOf('-') + 1);
    }

    private static Terminal check(String... more) {
        List<String> all = new ArrayList<>(List.of("check", ORDINARY, BANK, "--booking", "booking-01"));
        all.addAll(Arrays.asList(more));
        return Terminal.run(all.toArray(String[]::new));
    }

    private Terminal pick(Presentation presented, String scan) {
        return check("--confirm", SURGEON, "--checkpoint", "pick", "--presented", presented.in(folder), "--scan", scan);
    }

    private static Presentation right() {
        return new Presentation("an-ordinary-eye", "right", fingerprint(check("--confirm", SURGEON)))
                .backUp("spare", "harbour-60", "22 D")
                .backUp("sulcus", "harbour-60-three", "21 D")
                .backUp("anterior-chamber", "breakwater-ac", "18 D");
    }

    @Nested
    class Given_the_right_lens {

        @Test
        void planned_confirmed_and_picked_at_once_each_resource_is_written_once_and_is_valid() {
            Terminal seen = pick(right(), RIGHT);
            assertThat(seen.err()).contains("confirmation: confirmed", "pick: picked");
            assertThat(seen.exit()).isZero();
            assertThat(state(seen)).isEqualTo("picked");
            assertThat(bundle(seen).getEntry())
                    .extracting(entry -> entry.getRequest().getUrl())
                    .doesNotHaveDuplicates()
                    .contains("Procedure/plan-booking-01", "DeviceRequest/plan-booking-01-primary");
            bundle(seen).getEntry().forEach(entry -> {
                assertThat(entry.getRequest().getIfMatch()).isNull();
                assertThat(ProfileValidator.errors(entry.getResource()))
                        .as(entry.getRequest().getUrl())
                        .isEmpty();
            });
        }

        /** The steps of the day, each given what the earlier ones wrote. */
        @Test
        void every_checkpoint_is_passed_file_after_file() throws IOException {
            List<String> files = new ArrayList<>(List.of(ORDINARY, BANK));
            List<String> said = new ArrayList<>();
            files.add(step(files, said, "--confirm", SURGEON));
            for (String at : List.of("pick", "sign-in", "time-out", "before-opening", "sign-out")) {
                Presentation presented = right().box("harbour-60", "22 D");
                if (at.equals("sign-out")) {
                    presented.with(file -> ((ObjectNode) file.get("carton")).put("state", "opened"));
                }
                files.add(step(files, said, "--checkpoint", at, "--presented", presented.in(folder), "--scan", RIGHT));
            }
            assertThat(said)
                    .containsExactly(
                            "confirmation: confirmed",
                            "pick: picked",
                            "sign-in: signed in",
                            "time-out: timed out",
                            "before-opening: cleared to open",
                            "sign-out: completed");
            Bundle last = FHIR.newJsonParser()
                    .parseResource(Bundle.class, Files.readString(Path.of(files.get(files.size() - 1))));
            assertThat(last.getEntry())
                    .as("the Task over the version the five earlier steps made, and the trail")
                    .extracting(entry -> entry.getRequest().getIfMatch())
                    .containsExactly("W/\"5\"", null);
        }

        private String step(List<String> files, List<String> said, String... more) throws IOException {
            Stream<String> all = Stream.of(
                            Stream.of("check"), files.stream(), Stream.of("--booking", "booking-01"), Stream.of(more))
                    .flatMap(each -> each);
            Terminal seen = Terminal.run(all.toArray(String[]::new));
            assertThat(seen.exit()).as(seen.err()).isZero();
            said.add(seen.err().strip());
            return Files.writeString(Files.createTempFile(folder, "step", ".json"), seen.out())
                    .toString();
        }

        @Test
        void a_toric_one_is_read_with_cylinder_and_axis() {
            String in = "demo-data/astigmatism-worth-a-toric-lens/in.json";
            String[] start = {"check", in, BANK, "--booking", "ServiceRequest/booking-11", "--confirm", SURGEON};
            Terminal confirmed = Terminal.run(start);
            String axis = FHIR.newFhirPath()
                    .evaluateFirst(
                            task(confirmed),
                            "input.where(type.coding.code = 'lens-axis').value.value",
                            DecimalType.class)
                    .orElseThrow()
                    .getValueAsString();
            String presented = new Presentation("astigmatism-worth-a-toric-lens", "right", fingerprint(confirmed))
                    .box("harbour-60-toric", "20.5 D", "2.25 D")
                    .backUp("spare", "harbour-60-toric", "20.5 D", "2.25 D")
                    .backUp("sulcus", "harbour-60-three", "19 D")
                    .backUp("anterior-chamber", "breakwater-ac", "17 D")
                    .with(file -> file.put("axis", axis + " deg"))
                    .in(folder);
            List<String> all = new ArrayList<>(Arrays.asList(start));
            all.addAll(List.of("--checkpoint", "pick", "--presented", presented, "--scan"));
            all.add("(01)09521234000020(17)270831(10)HB6T2708(21)70191");
            Terminal seen = Terminal.run(all.toArray(String[]::new));
            assertThat(seen.exit()).as(seen.err()).isZero();
        }
    }

    @Nested
    class Given_something_that_differs {

        @Test
        void a_lens_of_another_power_stops_the_check_and_the_stop_is_written() {
            Terminal seen = pick(right(), STRONGER);
            assertThat(seen.exit()).isEqualTo(3);
            assertThat(seen.err()).contains("check-power-differs", "+22.00 D", "+23.50 D");
            assertThat(state(seen)).isEqualTo("failed");
        }

        @Test
        void every_difference_is_named() {
            Presentation presented = right().with(file -> {
                ((ObjectNode) file.get("patient")).put("birth-date", "1953-04-18");
                ((ObjectNode) file.get("eyes")).put("booking", "left");
                file.remove("allergies");
            });
            assertThat(pick(presented, RIGHT).err())
                    .contains("check-birth-date-differs", "check-eye-differs", "check-allergies-differ");
        }

        @Test
        void a_carton_that_the_bank_does_not_hold_stops_it() {
            Terminal seen = pick(right(), RIGHT.replace("70107", "99999"));
            assertThat(seen.exit()).isEqualTo(3);
            assertThat(state(seen)).isEqualTo("failed");
        }

        @Test
        void without_the_surgeons_confirmation_nothing_is_picked() {
            Terminal seen = check("--checkpoint", "pick", "--presented", right().in(folder), "--scan", RIGHT);
            assertThat(seen.exit()).isEqualTo(3);
            assertThat(seen.err()).contains("refused, nothing written", "check-not-confirmed");
            assertThat(state(seen)).isEqualTo("awaiting-confirmation");
        }

        @Test
        void two_people_may_go_on_without_a_back_up_for_a_reason() {
            Presentation presented = right().with(file -> {
                file.putArray("back-ups");
                file.putObject("override")
                        .put("clinician", SURGEON)
                        .put("reason", "none in the house")
                        .put("second", "Second nurse");
            });
            assertThat(pick(presented, RIGHT).exit()).isZero();
            assertThat(pick(presented, STRONGER).exit()).isEqualTo(3);
        }

        @Test
        void a_plan_that_is_withheld_has_no_check() {
            String in = "demo-data/silicone-oil/in.json";
            Terminal seen = Terminal.run("check", in, "--booking", "booking-10", "--confirm", SURGEON);
            assertThat(seen.exit()).isEqualTo(3);
            assertThat(seen.err()).contains("check-none-open");
        }
    }

    /** GS1 General Specifications: a GTIN of 14 digits with its check digit. Keyboard layouts: common practice, no source. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "(01)0952123400001",
                "(01)09521234000014(17)270228(10)HB62702(21)70107",
                "]C1à&à)(é&\"",
                "(01)09521234000013(17)270228(10)HB62702(21)70107(01)09521234000020",
                "",
            })
    void a_scan_that_cannot_be_read_writes_nothing(String scan) {
        Terminal seen = pick(right(), scan);
        assertThat(seen.exit()).isEqualTo(4);
        assertThat(seen.out().length()).as("characters written").isZero();
        assertThat(seen.err()).contains("label-");
    }

    @Test
    void no_scan_at_all_writes_nothing() {
        Terminal seen = check("--confirm", SURGEON, "--checkpoint", "pick", "--presented", right().in(folder));
        assertThat(seen.exit()).isEqualTo(4);
        assertThat(seen.out().length()).as("characters written").isZero();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{'eye': 'left'}                                            | presented.eye",
                "{'eyes': {'mark': 'both'}}                                 | presented.eyes.mark",
                "{'eyes': 'left'}                                           | presented.eyes",
                "{'allergies': 'none'}                                      | presented.allergies",
                "{'allergies': [1]}                                         | presented.allergies",
                "{'axis': 87}                                               | presented.axis",
                "{'axis': '87 mm'}                                          | presented.axis",
                "{'back-ups': [{'role': 'third'}]}                          | presented.back-ups[0].role",
                "{'carton': {'read': {'lens': {'model': 'x'}}}}             | presented.carton.read.lens.power",
                "{'patient': {'birth-date': '1953'}}                        | presented.patient.birth-date",
                "{'patient': {'numbers': [{'value': '7'}]}}                 | presented.patient.numbers[0]",
                "{'at': '2026-12-10T08:20:00Z', 'override': {'reason': 'x'}} | presented.override",
                "{}                                                         | presented.at",
                "[]                                                         | presented",
                "not json                                                   | presented",
            })
    void a_file_that_cannot_be_read_is_refused_by_the_place(String text, String place) throws IOException {
        Path file = Files.writeString(folder.resolve("bad.json"), text.replace('\'', '"'));
        Terminal seen =
                check("--confirm", SURGEON, "--checkpoint", "pick", "--presented", file.toString(), "--scan", RIGHT);
        assertThat(seen.exit()).isEqualTo(2);
        OperationOutcome outcome = FHIR.newJsonParser().parseResource(OperationOutcome.class, seen.out());
        assertThat(outcome.getIssueFirstRep().getExpression().get(0).getValue()).isEqualTo(place);
        assertThat(seen.err()).doesNotContain("\tat ");
    }

    @Test
    void what_is_not_there_is_named() {
        Terminal missing = check("--checkpoint", "pick", "--presented", "no-such-file.json", "--scan", RIGHT);
        assertThat(missing.exit()).isEqualTo(2);
        assertThat(missing.err()).contains("no-such-file.json");
        Terminal unknown = Terminal.run("check", ORDINARY, "--booking", "booking-99", "--confirm", SURGEON);
        assertThat(unknown.exit()).isEqualTo(2);
        assertThat(unknown.out()).contains("ServiceRequest/booking-99");
    }

    @Test
    void a_command_that_says_too_little_is_refused() {
        assertThat(check().exit()).isEqualTo(2);
        assertThat(check("--checkpoint", "pick").err()).contains("--presented");
        assertThat(check("--checkpoint", "lunch", "--presented", "x.json").err())
                .contains("no checkpoint lunch");
    }
}
