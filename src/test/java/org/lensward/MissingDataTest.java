package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.FaultyRecord.Fault;
import org.lensward.finding.FindingCode;
import org.lensward.record.JsonEdit;

/** The published policy of missing data, line by line, through the real command. */
class MissingDataTest {

    private static final Path POLICY = Path.of("fhir-profiles/missing-data.md");
    private static final Path GOOD = Path.of("demo-data/an-ordinary-eye/in.json");

    private static final Pattern TAKEN = Pattern.compile("`([A-Z][A-Za-z]+/[a-z0-9-]+)`(?: `(/[^`]+)`)?");
    private static final Pattern CODE = Pattern.compile("`([a-z]+(?:-[a-z]+)+)`");

    private static final String OF_ANOTHER_THING =
            "(label|record|unit-store|unit-model|unit-step|recall|check|implant|message|file|patient|dye|opening|clotting|steep|constant|lens-model-unk).*";

    /** One line of the table. */
    record Absence(String what, FaultyRecord wrong, String finding, String severity) {
        @Override
        public String toString() {
            return what;
        }
    }

    static Stream<Absence> absences() throws IOException {
        return Files.readAllLines(POLICY).stream()
                .filter(line -> line.startsWith("| ") && !line.startsWith("| absent"))
                .map(line -> line.split(" *\\| *"))
                .map(cells -> new Absence(cells[1], wrong(cells[2]), cells[3].replace("`", ""), cells[4]));
    }

    private static FaultyRecord wrong(String taken) {
        List<Fault> faults = TAKEN.matcher(taken)
                .results()
                .map(MissingDataTest::fault)
                .collect(Collectors.toCollection(ArrayList::new));
        return new FaultyRecord(GOOD, faults);
    }

    /** A whole resource is taken away by being entered in error, or by no longer being a lens. */
    private static Fault fault(MatchResult taken) {
        String resource = taken.group(1);
        if (taken.group(2) != null) {
            return new Fault(resource, new JsonEdit(taken.group(2), ""));
        }
        return resource.startsWith("DeviceDefinition/")
                ? new Fault(resource, new JsonEdit("/type", ""))
                : new Fault(resource, new JsonEdit("/status", "\"entered-in-error\""));
    }

    @ParameterizedTest
    @MethodSource("absences")
    void an_absence_becomes_its_finding(Absence absence) throws IOException {
        String line = absence.severity() + " " + absence.finding() + ":";

        assertThat(absence.wrong().planned().err()).contains(line);
        assertThat(Terminal.run("plan", GOOD.toString()).err()).doesNotContain(line);
    }

    @Test
    void every_code_that_the_policy_names_is_a_finding() throws IOException {
        Set<String> known =
                Stream.of(FindingCode.values()).map(FindingCode::code).collect(Collectors.toSet());

        assertThat(named()).hasSizeGreaterThan(20).isSubsetOf(known);
    }

    private static Set<String> named() throws IOException {
        return CODE.matcher(Files.readString(POLICY))
                .results()
                .map(found -> found.group(1))
                .filter(code -> !code.equals("data-absent-reason"))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The findings of absence that planning makes, by their names; the others concern cartons, messages, checks or what was planned. */
    @Test
    void every_finding_of_something_missing_in_the_record_is_in_the_policy() throws IOException {
        assertThat(Stream.of(FindingCode.values()).map(FindingCode::code))
                .filteredOn(code -> code.matches(
                        ".*(missing|without-eye|without-date|unknown|not-recorded|not-measured|not-chosen)"))
                .filteredOn(code -> !code.matches(OF_ANOTHER_THING))
                .hasSizeGreaterThan(12)
                .isSubsetOf(named());
    }

    @Test
    void a_reason_for_an_absence_is_an_absence_and_takes_no_value_away() throws IOException {
        Fault reason = new Fault(
                "Observation/axial-length-right-01",
                new JsonEdit(
                        "/dataAbsentReason",
                        "{\"coding\": [{\"system\": \"http://terminology.hl7.org/CodeSystem/data-absent-reason\","
                                + " \"code\": \"not-performed\"}]}"));
        Fault noValue = new Fault("Observation/axial-length-right-01", new JsonEdit("/valueQuantity", ""));
        Fault comparator =
                new Fault("Observation/axial-length-right-01", new JsonEdit("/valueQuantity/comparator", "\"<\""));

        assertThat(new FaultyRecord(GOOD, List.of(noValue, reason)).planned().err())
                .contains("withholds value-missing:");
        assertThat(new FaultyRecord(GOOD, List.of(comparator)).planned().err()).contains("withholds value-missing:");
        assertThat(new FaultyRecord(GOOD, List.of(reason)).planned().exit()).isZero();
    }
}
