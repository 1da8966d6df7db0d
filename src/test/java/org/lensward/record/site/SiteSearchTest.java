package org.lensward.record.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Test;

/** What a record is asked for, by FHIR R4 search: tokens joined by commas, the comma inside one escaped. */
class SiteSearchTest {

    private static final String STANDARD =
            "http://snomed.info/sct|415089008,http://snomed.info/sct|313999004," + "http://snomed.info/sct|385468004";

    private static ServiceRequest coded(String... codes) {
        return new ServiceRequest().setCode(Site.concept(codes));
    }

    @Test
    void without_a_map_the_standard_codes_are_asked_for() {
        SiteSearch search = new SiteSearch(SiteCodes.none());
        assertThat(search.bookings()).isEqualTo(STANDARD);
        assertThat(search.lensModels()).isEqualTo("https://lensward.org/fhir/CodeSystem/device-type|intraocular-lens");
        assertThat(search.isBooking(coded("http://snomed.info/sct|415089008"))).isTrue();
        assertThat(search.isBooking(coded("OP"))).isFalse();
    }

    @Test
    void local_codes_are_asked_for_beside_them() {
        SiteSearch search = new SiteSearch(Site.codes(
                Site.code("OP 1,2", "snomed|415089008", null),
                Site.code("IOL", "device-type|intraocular-lens", null),
                Site.code("AL", "measurement|axial-length", null)));
        assertThat(search.bookings()).isEqualTo(STANDARD + ",https%3A%2F%2Fsite.example%2Fcodes|OP+1%5C%2C2");
        assertThat(search.lensModels()).endsWith("|intraocular-lens,https%3A%2F%2Fsite.example%2Fcodes|IOL");
    }

    @Test
    void a_booking_is_known_by_its_local_code_unless_that_is_ambiguous() {
        SiteCodes codes = Site.codes(
                Site.code("OP", "snomed|415089008", null),
                Site.code("X", "snomed|415089008", null),
                Site.code("X", "sign|glaucoma", null),
                Site.code("AL", "measurement|axial-length", null));
        assertThat(List.of("OP", "X", "AL", "OTHER"))
                .extracting(code -> new SiteSearch(codes).isBooking(coded(code)))
                .containsExactly(true, false, false, false);
    }
}
