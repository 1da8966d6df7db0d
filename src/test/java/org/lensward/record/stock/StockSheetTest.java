package org.lensward.record.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.record.stock.PlannedDay.DAY;
import static org.lensward.record.stock.PlannedDay.FHIR;
import static org.lensward.record.stock.PlannedDay.POLICY;
import static org.lensward.record.stock.PlannedDay.TODAY;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.finding.Evidence;
import org.lensward.finding.FindingCode;
import org.lensward.lens.KitRole;
import org.lensward.lens.stock.Assignment;
import org.lensward.lens.stock.LensNeed;
import org.lensward.lens.stock.Offer;
import org.lensward.lens.stock.ShortageReason;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.lens.stock.Stocks;
import org.lensward.lens.stock.Transfer;

/** The demo's bank against the demo's plans; what it lacks, and why, is what {@code demo-data/README.md} says it was made to lack. */
class StockSheetTest {

    private static final String MAIN = "Location/harbour-site";
    private static final String NORTH = "Location/north-store";
    private static final String SHORT_EYE = "ServiceRequest/booking-02";

    private static Map<String, ShortageReason> shortages(StockSheet sheet) {
        return sheet.allocation().shortages().stream()
                .collect(Collectors.toMap(each -> name(each.need()), each -> each.reason()));
    }

    private static String name(LensNeed need) {
        return need.booking().replace("ServiceRequest/booking-", "") + " "
                + need.role().code();
    }

    private static StockPolicy withTransfer(int days) {
        Transfer road = Stocks.way(NORTH, MAIN, days, 12);
        return new StockPolicy(
                POLICY.leadTime(),
                POLICY.safetyFactor(),
                POLICY.floor(),
                POLICY.common(),
                POLICY.expiresSoon(),
                POLICY.shared(),
                List.of(road));
    }

    @Nested
    class Given_the_theatre_day {

        private final StockSheet sheet = new PlannedDay().sheet();

        @Test
        void four_lenses_are_short_each_for_its_own_reason() {
            assertThat(shortages(sheet))
                    .containsOnly(
                            Map.entry("02 spare", ShortageReason.TOO_FAR),
                            Map.entry("02 sulcus", ShortageReason.ALL_QUARANTINED),
                            Map.entry("03 anterior-chamber", ShortageReason.NONE_HELD),
                            Map.entry("11 spare", ShortageReason.EXPIRED_BY_THE_DAY));
        }

        @Test
        void two_anterior_chamber_lenses_stand_by_for_two_eyes_each() {
            assertThat(sheet.allocation().assignments().stream()
                            .filter(Assignment::isShared)
                            .map(each -> each.needs().stream()
                                    .map(StockSheetTest::name)
                                    .toList()))
                    .containsExactlyInAnyOrder(
                            List.of("01 anterior-chamber", "04 anterior-chamber"),
                            List.of("05 anterior-chamber", "11 anterior-chamber"));
        }

        @Test
        void every_lens_of_the_seven_planned_eyes_is_looked_for_and_none_of_the_withheld() {
            assertThat(sheet.needs()).hasSize(7 * KitRole.values().length);
            assertThat(sheet.needs()).extracting(LensNeed::location).containsOnly(MAIN);
            assertThat(sheet.needs())
                    .extracting(LensNeed::booking)
                    .doesNotContain("ServiceRequest/booking-06", "ServiceRequest/booking-10");
        }

        @Test
        void what_is_short_is_ordered_a_lead_time_before_the_day() {
            assertThat(sheet.allocation().orders()).hasSize(4).allSatisfy(order -> {
                assertThat(order.location()).isEqualTo(MAIN);
                assertThat(order.orderBy()).isEqualTo(DAY.minusDays(7));
                assertThat(order.late()).isFalse();
            });
        }

        @Test
        void a_booking_hears_of_its_own_lenses_alone() {
            assertThat(sheet.findings(new Evidence(SHORT_EYE, "1", "")))
                    .extracting(each -> each.code())
                    .containsExactly(FindingCode.LENS_NOT_IN_STOCK, FindingCode.LENS_NOT_IN_STOCK);
            assertThat(sheet.findings(new Evidence("ServiceRequest/booking-06", "1", "")))
                    .isEmpty();
        }

        @Test
        void cartons_near_their_last_day_are_listed_the_first_to_expire_first() {
            assertThat(sheet.expiring())
                    .extracting(each -> each.identity().serial().orElseThrow())
                    .containsExactly("70415", "70198", "70177");
        }

        @Test
        void each_site_has_levels_of_its_own() {
            assertThat(sheet.levels()).extracting(StockSheet.SiteLevels::site).containsExactly(MAIN, NORTH);
            assertThat(sheet.levels().get(1).levels()).singleElement().satisfies(level -> assertThat(level.onHand())
                    .isEqualTo(1));
        }
    }

    @Test
    void other_days_are_not_looked_at() {
        assertThat(new PlannedDay()
                        .sheet(POLICY, new StockSheet.Days(TODAY, DAY.minusDays(1), TODAY))
                        .needs())
                .isEmpty();
        assertThatThrownBy(() -> new StockSheet.Days(DAY, TODAY, TODAY)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void a_carton_at_the_other_site_is_fetched_where_the_policy_has_a_way_in_time() {
        assertThat(shortages(new PlannedDay().sheet(withTransfer(15)))).doesNotContainKey("02 spare");
        assertThat(shortages(new PlannedDay().sheet(withTransfer(16)))).containsKey("02 spare");
        StockSheet sheet = new PlannedDay().sheet(withTransfer(1));
        assertThat(sheet.allocation().assignments())
                .filteredOn(each -> each.transfer().isPresent())
                .singleElement()
                .satisfies(each -> {
                    assertThat(name(each.needs().get(0))).isEqualTo("02 spare");
                    assertThat(each.transfer().orElseThrow().from()).isEqualTo(NORTH);
                });
        assertThat(sheet.findings(new Evidence(SHORT_EYE, "1", "")))
                .extracting(each -> each.code())
                .contains(FindingCode.LENS_TO_BE_FETCHED);
    }

    /** The plan's own table, read by FHIRPath. */
    @Test
    void the_nearest_power_in_stock_is_offered_with_what_the_plan_predicts_it_would_leave() {
        PlannedDay day = new PlannedDay();
        day.change(Device.class, idOf(day, "70282"), device -> become(device, "29"));
        day.change(Device.class, idOf(day, "70289"), device -> become(device, "28.5"));
        Offer offer = day.sheet().offers().get(0);

        assertThat(name(offer.need())).isEqualTo("02 spare");
        assertThat(offer.alternative().power().value()).isEqualTo(29);
        assertThat(offer.unit().identity().serial()).contains("70282");
        assertThat(offer.alternative().predicted().value()).isCloseTo(predicted(day, "29"), within(1e-9));
        assertThat(offer.alternative().predicted().value()).isGreaterThan(predicted(day, "29.5"));
        assertThat(day.sheet().offers())
                .as("nothing is offered for a sulcus or an anterior-chamber lens")
                .hasSize(1);
    }

    private static String idOf(PlannedDay day, String serial) {
        return day.shelf()
                .all(Device.class)
                .filter(each -> serial.equals(each.getSerialNumber()))
                .map(each -> each.getIdElement().getIdPart())
                .findFirst()
                .orElseThrow();
    }

    private static void become(Device device, String power) {
        device.setDefinition(new Reference("DeviceDefinition/harbour-60"));
        device.getPropertyFirstRep().getValueQuantityFirstRep().setValue(new java.math.BigDecimal(power));
    }

    private static double predicted(PlannedDay day, String power) {
        String extension = "'https://lensward.org/fhir/StructureDefinition/labelled-power'";
        String row = "component.where(extension(" + extension + ").value.value = " + power + ").value";
        return day.shelf()
                .all(Observation.class)
                .filter(each -> each.getIdElement().getIdPart().startsWith("plan-booking-02-"))
                .filter(each -> !FHIR.newFhirPath()
                        .evaluate(
                                each,
                                "component.where(code.coding.code = 'chosen' and value = true)",
                                Observation.ObservationComponentComponent.class)
                        .isEmpty())
                .flatMap(each -> FHIR.newFhirPath().evaluate(each, row, Quantity.class).stream())
                .mapToDouble(each -> each.getValue().doubleValue())
                .findFirst()
                .orElseThrow();
    }

    @Nested
    class Given_a_theatre {

        private final PlannedDay day = new PlannedDay();

        private List<String> sites() {
            return day.sheet().needs().stream()
                    .filter(need -> need.booking().equals(SHORT_EYE))
                    .map(LensNeed::location)
                    .distinct()
                    .toList();
        }

        private void unstated() {
            day.change(Appointment.class, "appointment-02", each -> each.getParticipant()
                    .removeIf(member -> member.getActor().getReference().startsWith("Location/")));
        }

        @Test
        void moved_to_another_site_its_lenses_are_needed_there() {
            day.change(Location.class, "theatre-1", each -> each.setPartOf(new Reference(NORTH)));
            assertThat(sites()).containsExactly(NORTH);
            assertThat(day.sheet().allocation().assignments())
                    .filteredOn(each -> each.needs().get(0).booking().equals(SHORT_EYE))
                    .extracting(each -> each.needs().get(0).role())
                    .containsExactly(KitRole.PRIMARY);
        }

        @Test
        void not_stated_the_bookings_own_place_counts() {
            unstated();
            day.change(
                    ServiceRequest.class,
                    "booking-02",
                    each -> each.addLocationReference(new Reference("Location/theatre-1")));
            assertThat(sites()).containsExactly(MAIN);
        }

        @Test
        void stated_nowhere_no_site_is_guessed() {
            unstated();
            assertThat(sites()).containsExactly("a place that is not stated");
            assertThat(shortages(day.sheet())).containsEntry("02 primary", ShortageReason.TOO_FAR);
            Bundle orders = SupplyRequests.transaction(day.sheet().allocation().orders(), day.shelf());
            assertThat(FHIR.newFhirPath()
                            .evaluateFirst(
                                    orders,
                                    "entry.resource.where(deliverTo.exists().not() and parameter.value.value = 29.5)",
                                    org.hl7.fhir.r4.model.SupplyRequest.class))
                    .isPresent();
        }

        @Test
        void of_an_appointment_called_off_counts_for_nothing() {
            Appointment old = day.find(Appointment.class, "appointment-02").copy();
            unstated();
            old.setStatus(AppointmentStatus.CANCELLED).setId("appointment-old");
            day.add(old);
            assertThat(sites()).containsExactly("a place that is not stated");
        }
    }

    @Test
    void a_withdrawn_booking_needs_nothing_though_its_plan_still_stands() {
        PlannedDay day = new PlannedDay();
        day.change(ServiceRequest.class, "booking-02", each -> each.setStatus(ServiceRequestStatus.REVOKED));
        assertThat(day.sheet().needs()).extracting(LensNeed::booking).doesNotContain(SHORT_EYE);
    }

    @Test
    void a_request_that_does_not_say_which_lens_or_when_is_no_need() {
        PlannedDay day = new PlannedDay();
        day.change(DeviceRequest.class, "plan-booking-02-primary", each -> each.getExtension()
                .clear());
        day.change(DeviceRequest.class, "plan-booking-02-spare", each -> each.setOccurrence(null));
        day.change(DeviceRequest.class, "plan-booking-02-sulcus", each -> each.getParameter()
                .clear());
        assertThat(day.sheet().needs())
                .filteredOn(each -> each.booking().equals(SHORT_EYE))
                .extracting(LensNeed::role)
                .containsExactly(KitRole.ANTERIOR_CHAMBER);
    }
}
