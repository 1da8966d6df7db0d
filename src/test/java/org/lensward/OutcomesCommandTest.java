package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.MeasureReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.record.Fhir;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Shelf;
import org.lensward.record.outcome.InventedYear;

/** Outcomes from the command line, on the invented year of the demo. */
class OutcomesCommandTest {

    private static final Path FOLDER = Path.of("demo-data/outcomes-of-a-year");
    private static final String EXPORT = FOLDER.resolve("export.ndjson").toString();

    @Test
    void the_year_is_as_its_generator_makes_it() throws IOException {
        assertThat(Files.readAllLines(FOLDER.resolve("export.ndjson"))).isEqualTo(InventedYear.lines());
    }

    @Test
    void the_year_is_told_as_the_folder_says() throws IOException {
        Terminal seen = Terminal.run("outcomes", EXPORT);
        assertThat(seen.exit()).as(seen.err()).isZero();
        assertThat(seen.out()).isEqualTo(Files.readString(FOLDER.resolve("out.txt")));
        assertThat(seen.out()).doesNotContain("Patient/", "person-");
    }

    /** The order of an export means nothing, so the same eyes give the same figures. */
    @Test
    void another_order_of_the_lines_tells_the_same(@TempDir Path folder) throws IOException {
        List<String> sorted = InventedYear.lines().stream().sorted().toList();
        Path half = Files.write(folder.resolve("one.ndjson"), sorted.subList(0, 900));
        Path rest = Files.write(folder.resolve("two.ndjson"), sorted.subList(900, sorted.size()));
        assertThat(Terminal.run("outcomes", rest.toString(), half.toString()).out())
                .isEqualTo(Files.readString(FOLDER.resolve("out.txt")));
    }

    @Test
    void its_reports_are_valid_and_name_no_one() {
        Terminal seen = Terminal.run("outcomes", EXPORT, "--json", "--reporter", "Organization/harbour-eye-unit");
        Bundle written = Fhir.r4().newJsonParser().parseResource(Bundle.class, seen.out());
        assertThat(new Shelf(written).all(MeasureReport.class))
                .hasSize(2)
                .allSatisfy(each -> assertThat(ProfileValidator.errors(each)).isEmpty())
                .allSatisfy(each ->
                        assertThat(each.getReporter().getReference()).isEqualTo("Organization/harbour-eye-unit"));
        assertThat(seen.out()).doesNotContain("Patient/", "person-");
        assertThat(seen.err()).contains("All eyes that count");
    }

    @Test
    void without_an_eye_that_counts_it_says_so_by_its_exit_code(@TempDir Path folder) throws IOException {
        Path none = Files.writeString(folder.resolve("none.ndjson"), "{\"resourceType\":\"Device\",\"id\":\"a\"}\n");
        assertThat(Terminal.run("outcomes", none.toString()).exit()).isEqualTo(3);
    }

    @Test
    void what_cannot_be_read_is_refused_with_an_outcome() {
        Terminal seen = Terminal.run("outcomes", "no-such-file.ndjson");
        assertThat(seen.exit()).isEqualTo(2);
        assertThat(seen.out()).contains("OperationOutcome");
        assertThat(Terminal.run("outcomes").exit()).isEqualTo(2);
    }

    @Test
    void nothing_is_adopted_without_a_name() {
        assertThat(Terminal.run(
                                "outcomes",
                                "adopt",
                                "c-12345678",
                                EXPORT,
                                "--record",
                                "http://localhost:1/fhir",
                                "--constants-version",
                                "v2")
                        .exit())
                .isEqualTo(2);
        assertThat(Terminal.run(
                                "outcomes",
                                "adopt",
                                "c-12345678",
                                EXPORT,
                                "--record",
                                "http://localhost:1/fhir",
                                "--constants-version",
                                "v2",
                                "--clinician",
                                " ")
                        .exit())
                .isEqualTo(3);
    }
}
