package org.lensward.record.stock;

import static org.assertj.core.api.Assertions.assertThat;

import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.Test;
import org.lensward.record.Shelf;

/** HL7 FHIR R4, Location.partOf: another Location of which this is physically a part. */
class SitesTest {

    private final Bundle bundle = new Bundle();

    private void part(String id, String of) {
        Location location = new Location();
        location.setId(id);
        if (!of.isEmpty()) {
            location.setPartOf(new Reference("Location/" + of));
        }
        bundle.addEntry().setResource(location);
    }

    private String site(String id) {
        return new Sites(new Shelf(bundle)).of("Location/" + id);
    }

    @Test
    void a_shelf_in_a_store_in_a_wing_belongs_to_the_building() {
        part("building", "");
        part("wing", "building");
        part("store", "wing");
        part("shelf", "store");
        assertThat(site("shelf")).isEqualTo("Location/building");
        assertThat(site("building")).isEqualTo("Location/building");
    }

    @Test
    void what_is_part_of_a_place_that_was_not_read_belongs_there() {
        part("store", "unread");
        assertThat(site("store")).isEqualTo("Location/unread");
        assertThat(site("nowhere")).isEqualTo("Location/nowhere");
    }

    @Test
    void a_place_named_in_words_alone_is_no_way_out() {
        Location store = new Location().setPartOf(new Reference().setDisplay("the main building"));
        store.setId("store");
        bundle.addEntry().setResource(store);
        assertThat(site("store")).isEqualTo("Location/store");
    }

    @Test
    void a_ring_is_one_site_from_wherever_it_is_entered() {
        part("east", "west");
        part("west", "south");
        part("south", "east");
        part("store", "west");
        part("self", "self");
        assertThat(site("east")).isEqualTo("Location/east");
        assertThat(site("west")).isEqualTo("Location/east");
        assertThat(site("south")).isEqualTo("Location/east");
        assertThat(site("store")).isEqualTo("Location/east");
        assertThat(site("self")).isEqualTo("Location/self");
    }
}
