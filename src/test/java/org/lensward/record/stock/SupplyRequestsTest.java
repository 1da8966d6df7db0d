package org.lensward.record.stock;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.SupplyRequest;
import org.hl7.fhir.r4.model.SupplyRequest.RequestPriority;
import org.hl7.fhir.r4.model.SupplyRequest.SupplyRequestStatus;
import org.junit.jupiter.api.Test;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.Order;
import org.lensward.quantity.Dioptres;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Shelf;

class SupplyRequestsTest {

    private final PlannedDay day = new PlannedDay();

    private Bundle ordered() {
        return SupplyRequests.transaction(day.sheet().allocation().orders(), day.shelf());
    }

    private static List<SupplyRequest> requests(Bundle transaction) {
        return new Shelf(transaction).all(SupplyRequest.class).toList();
    }

    private static String json(Bundle bundle) {
        return PlannedDay.FHIR.newJsonParser().encodeResourceToString(bundle);
    }

    /** The record once it has taken the orders. */
    private void taken() {
        requests(ordered()).forEach(each -> {
            each.getMeta().setVersionId("3");
            each.setId("SupplyRequest/" + each.getIdElement().getIdPart() + "/_history/3");
            day.add(each);
        });
    }

    @Test
    void every_order_keeps_its_profile() {
        assertThat(requests(ordered())).hasSize(4).allSatisfy(each -> {
            assertThat(ProfileValidator.errors(each)).isEmpty();
            assertThat(each.getDeliverTo().getReference()).isEqualTo("Location/harbour-site");
        });
    }

    @Test
    void the_toric_lens_is_asked_for_by_name_power_and_cylinder() {
        SupplyRequest toric = requests(ordered()).stream()
                .filter(each -> each.getParameter().size() == 2)
                .findFirst()
                .orElseThrow();
        assertThat(toric.getItemCodeableConcept().getText()).isEqualTo("Harbour 60 toric");
        assertThat(toric.getOccurrenceDateTimeType().getValueAsString()).isEqualTo("2026-12-10");
        assertThat(SupplyRequests.kind(toric))
                .contains(new LensKind(
                        "DeviceDefinition/harbour-60-toric", Dioptres.of(20.5), Optional.of(Dioptres.of(2.25))));
    }

    @Test
    void ordered_again_before_it_is_taken_it_is_the_same_byte_for_byte() {
        assertThat(json(SupplyRequests.transaction(
                        new PlannedDay().sheet().allocation().orders(), day.shelf())))
                .isEqualTo(json(ordered()));
    }

    @Test
    void ordered_again_once_it_is_taken_nothing_is_left_to_write() {
        taken();
        assertThat(ordered().getEntry()).isEmpty();
    }

    @Test
    void an_order_that_has_become_late_is_written_anew_over_the_version_that_was_read() {
        taken();
        LocalDate after = LocalDate.of(2026, 12, 4);
        Bundle late = SupplyRequests.transaction(
                day.sheet(PlannedDay.POLICY, new StockSheet.Days(PlannedDay.DAY, PlannedDay.DAY, after))
                        .allocation()
                        .orders(),
                day.shelf());
        assertThat(late.getEntry()).hasSize(4).allSatisfy(each -> {
            assertThat(each.getRequest().getIfMatch()).isEqualTo("W/\"3\"");
            assertThat(((SupplyRequest) each.getResource()).getPriority()).isEqualTo(RequestPriority.URGENT);
            assertThat(ProfileValidator.errors(each.getResource())).isEmpty();
        });
    }

    @Test
    void what_is_still_short_after_its_order_was_closed_is_ordered_again() {
        taken();
        String closed = day.shelf()
                .all(SupplyRequest.class)
                .findFirst()
                .orElseThrow()
                .getIdElement()
                .getIdPart();
        day.change(SupplyRequest.class, closed, each -> each.setStatus(SupplyRequestStatus.CANCELLED));
        assertThat(ordered().getEntry())
                .singleElement()
                .extracting(BundleEntryComponent::getRequest)
                .extracting(Bundle.BundleEntryRequestComponent::getUrl)
                .isEqualTo("SupplyRequest/" + closed);
    }

    @Test
    void a_model_that_is_not_in_the_catalogue_is_named_by_its_reference() {
        LensKind unknown = new LensKind("DeviceDefinition/unknown", Dioptres.of(10), Optional.empty());
        Order order =
                new Order(unknown, 2, "Location/x", PlannedDay.DAY, PlannedDay.DAY, List.of("ServiceRequest/b"), true);
        SupplyRequest request = requests(SupplyRequests.transaction(List.of(order), day.shelf()))
                .get(0);
        assertThat(request.getItemCodeableConcept().getText()).isEqualTo("DeviceDefinition/unknown");
        assertThat(request.getQuantity().getValue()).isEqualByComparingTo("2");
    }
}
