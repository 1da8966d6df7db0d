package org.lensward.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Patient;
import org.junit.jupiter.api.Test;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.PolicyFile;
import org.lensward.plan.order.Place;
import org.lensward.plan.order.SuggestedTurn;
import org.lensward.record.Fhir;
import org.lensward.record.Publication;
import org.lensward.record.Shelf;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/** The demo's day, planned and read back from what was written. The order's rules are common practice, no source. */
class DaySheetsTest {

    private static final Clock BEFORE = Clock.fixed(Instant.parse("2026-11-25T08:00:00Z"), ZoneOffset.UTC);

    private static Bundle day() {
        Bundle all = new Bundle();
        try (Stream<Path> inside = Files.list(Path.of("demo-data"))) {
            inside.filter(Files::isDirectory)
                    .map(folder -> folder.resolve("in.json"))
                    .filter(Files::exists)
                    .sorted()
                    .forEach(file -> read(file).getEntry().forEach(all::addEntry));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return all;
    }

    private static Bundle read(Path file) {
        try {
            return Fhir.r4().newJsonParser().parseResource(Bundle.class, Files.readString(file));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static List<DaySheet> sheets(Bundle day) {
        new BundlePlanning(Fhir.r4(), PolicyFile.shipped(), BEFORE).plan(day).forEach(each -> {
            if (each.publication() instanceof Publication.Write write) {
                write.bundle().getEntry().forEach(day::addEntry);
            }
        });
        return DaySheets.of(new Shelf(day), PolicyFile.shipped().preparation());
    }

    private static <T> Stream<T> all(Bundle bundle, Class<T> type) {
        return bundle.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(type::isInstance)
                .map(type::cast);
    }

    private static List<String> order(DaySheet sheet) {
        return sheet.turns().stream()
                .map(SuggestedTurn::eye)
                .map(eye -> eye.booking().replace("ServiceRequest/booking-", ""))
                .toList();
    }

    @Test
    void each_theatre_has_its_own_sheet() {
        assertThat(sheets(day()))
                .extracting(DaySheet::theatre, DaySheet::day)
                .containsExactly(tuple("Theatre 1", "2026-12-10"), tuple("Theatre 2", "2026-12-10"));
    }

    @Test
    void raised_pressure_comes_first_and_an_eye_without_a_lens_last() {
        DaySheet first = sheets(day()).get(0);
        assertThat(order(first)).startsWith("04").endsWith("06");
        assertThat(first.turns().get(0).reasons()).containsExactly("the pressure inside the eye is raised");
    }

    @Test
    void what_is_used_up_adds_up_and_is_brought_for_each_planned_eye() {
        DaySheet first = sheets(day()).get(0);
        int antiseptics = first.bring().things().stream()
                .filter(each -> each.item() == TheatreItem.ANTISEPTIC)
                .mapToInt(Bring::count)
                .sum();
        long planned = first.turns().stream()
                .filter(turn -> turn.eye().place() != Place.NOT_YET)
                .count();
        assertThat(antiseptics).isEqualTo((int) planned);
        assertThat(first.lenses()).containsEntry("Harbour 60 +22.0 D, primary", 2);
    }

    @Test
    void namesakes_however_spelt_are_not_put_next_to_each_other() {
        Bundle day = day();
        // 01 and 02 stand next to each other: nothing is found that would place either.
        assertThat(order(sheets(day()).get(0))).containsSequence("01", "02");
        all(day, Patient.class)
                .filter(patient -> List.of("patient-01", "patient-02")
                        .contains(patient.getIdElement().getIdPart()))
                .forEach(patient -> patient.getNameFirstRep()
                        .setFamily(patient.getIdElement().getIdPart().equals("patient-01") ? "Meyer" : "Maïer"));
        DaySheet first = sheets(day).get(0);
        assertThat(first.turns().stream()
                        .filter(turn -> turn.reasons().stream().anyMatch(why -> why.contains("namesake"))))
                .as("no room: only these two may be operated on at any time")
                .hasSize(1);
    }

    @Test
    void a_booking_without_an_appointment_is_listed_under_no_theatre() {
        Bundle day = day();
        day.getEntry().removeIf(entry -> entry.getResource() instanceof Appointment);
        List<DaySheet> sheets = sheets(day);
        assertThat(sheets).extracting(DaySheet::theatre).containsOnly("theatre not stated");
        assertThat(sheets).extracting(sheet -> sheet.turns().size()).containsExactly(12);
    }

    @Test
    void the_table_names_bookings_and_nobody() {
        Bundle day = day();
        String table = DayTable.of(sheets(day));
        assertThat(table).contains("1. booking-04: the pressure inside the eye is raised", "4 x antiseptic: povidone");
        all(day, Patient.class).forEach(patient -> assertThat(table)
                .doesNotContain(patient.getNameFirstRep().getFamily()));
    }
}
