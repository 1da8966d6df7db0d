package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.SupplyRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.record.Fhir;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Shelf;

/** The stock check from the command line, on the demo's files; what is short is what {@code demo-data/README.md} says. */
class StockCommandTest {

    private static final FhirContext FHIR = Fhir.r4();
    private static final String BANK = "demo-data/lens-bank.json";
    private static final String ORDINARY = "demo-data/an-ordinary-eye/in.json";

    private final Path folder;

    StockCommandTest(@TempDir Path folder) {
        this.folder = folder;
    }

    private static Terminal stock(String... more) {
        List<String> all = new ArrayList<>(List.of("stock"));
        try (Stream<Path> stories = Files.list(Path.of("demo-data"))) {
            stories.map(story -> story.resolve("in.json"))
                    .filter(Files::exists)
                    .sorted()
                    .forEach(file -> all.add(file.toString()));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        all.addAll(List.of(BANK, "--today", "2026-11-25"));
        all.addAll(Arrays.asList(more));
        return Terminal.run(all.toArray(String[]::new));
    }

    private String changed(String old, String now) throws IOException {
        String text = Files.readString(Path.of(BANK));
        assertThat(text).contains(old);
        return Files.writeString(folder.resolve("bank.json"), text.replace(old, now))
                .toString();
    }

    @Test
    void what_is_short_is_said_with_its_reason_and_what_to_order_by_when() {
        Terminal seen = stock();
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(seen.out().lines().filter(line -> line.contains("SHORT")).map(String::strip))
                .containsExactly(
                        "spare: Harbour 60 +29.50 D, SHORT: every other carton of this kind in date lies too far away to arrive"
                                + " by the day",
                        "sulcus: Harbour 60 three-piece +28.00 D, SHORT: every other carton of this kind is quarantined",
                        "anterior-chamber: Breakwater AC +10.50 D, SHORT: no carton of this kind is held",
                        "spare: Harbour 60 toric +20.50 D cylinder 2.25 D, SHORT: every other carton of this kind is out of date"
                                + " by the day");
        assertThat(seen.out().lines().filter(line -> line.contains("order by 2026-12-03")))
                .hasSize(4);
        assertThat(seen.out())
                .contains("shared with ServiceRequest/booking-04", "Location/lens-store lot HB62702 serial 70107")
                .contains("  ServiceRequest/booking-06")
                .doesNotContain("LATE", "Tillwick");
    }

    @Test
    void an_order_past_its_day_is_late() {
        String ordinary = "demo-data/a-short-eye/in.json";
        assertThat(Terminal.run("stock", ordinary, BANK, "--today", "2026-12-04")
                        .out())
                .contains("order by 2026-12-03 (LATE)");
    }

    @Test
    void covered_it_says_so_by_its_exit_code() {
        Terminal seen = Terminal.run("stock", ORDINARY, BANK, "--today", "2026-11-25");
        assertThat(seen.exit()).isZero();
        assertThat(seen.out()).contains("2026-12-10  ServiceRequest/booking-01").doesNotContain("SHORT", "To order");
    }

    @Test
    void of_other_days_nothing_is_looked_for() {
        Terminal seen = stock("--from", "2026-11-25");
        assertThat(seen.exit()).isZero();
        assertThat(seen.out()).contains("No lens is planned for these days.");
        assertThat(stock("--from", "2026-12-10", "--to", "2026-12-10").exit()).isEqualTo(3);
    }

    @Test
    void orders_are_printed_as_one_transaction_and_once_they_stand_not_again() throws IOException {
        Terminal seen = stock("--order");
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(seen.err()).contains("SHORT");
        Bundle orders = FHIR.newJsonParser().parseResource(Bundle.class, seen.out());
        assertThat(new Shelf(orders).all(SupplyRequest.class))
                .hasSize(4)
                .allSatisfy(each -> assertThat(ProfileValidator.errors(each)).isEmpty());
        assertThat(stock("--order").out()).isEqualTo(seen.out());
        String taken =
                Files.writeString(folder.resolve("orders.json"), seen.out()).toString();
        Terminal again = stock(taken, "--order");
        assertThat(again.err()).contains("SHORT");
        assertThat(FHIR.newJsonParser().parseResource(Bundle.class, again.out()).getEntry())
                .isEmpty();
    }

    @Test
    void a_neighbouring_power_in_stock_is_offered_with_what_it_would_leave() throws IOException {
        assertThat(stock(changed("\"value\": 24,", "\"value\": 29,")).out())
                .containsPattern("\\+29\\.50 D, SHORT: .*; nearest in stock \\+29\\.00 D \\(Location/lens-store"
                        + " .*\\), predicted to leave [+-]\\d\\.\\d\\d D, if the surgeon chooses it");
    }

    @Test
    void a_carton_that_cannot_be_read_is_named_and_left_out() throws IOException {
        String broken = changed("\"deviceIdentifier\": \"09521234000013\",", "");
        Terminal seen = Terminal.run("stock", ORDINARY, broken, "--today", "2026-11-25");
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(seen.out()).contains("Not read", "Device/unit-06329e230b5575a5e064bba9");
    }

    @Test
    void what_cannot_be_read_is_refused_with_an_outcome() {
        Terminal seen = Terminal.run("stock", "no-such-file.json");
        assertThat(seen.exit()).isEqualTo(2);
        assertThat(seen.out()).contains("OperationOutcome");
        assertThat(Terminal.run("stock", ORDINARY, "--from", "2026-12-10", "--to", "2026-12-09")
                        .exit())
                .isEqualTo(2);
        assertThat(Terminal.run("stock", ORDINARY, "--from", "tomorrow").exit()).isEqualTo(2);
    }
}
