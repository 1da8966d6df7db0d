package org.lensward.record.site;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.record.Changes;
import org.lensward.record.Systems;
import org.lensward.record.Vocabulary;
import org.lensward.record.Vocabulary.Place;

/** What to ask a record for whose bookings and lens models may carry local codes. */
public final class SiteSearch {

    private final SiteCodes codes;

    public SiteSearch(SiteCodes codes) {
        this.codes = codes;
    }

    /** The codes of the bookings we plan, as a search value. */
    public String bookings() {
        return Stream.concat(
                        Stream.of(Changes.LENS_SURGERY_TOKENS),
                        codes.standingFor(Systems.SNOMED, Changes.LENS_SURGERY).map(SiteSearch::token))
                .collect(Collectors.joining(","));
    }

    /** The codes of lens models, as a search value. */
    public String lensModels() {
        return Stream.concat(
                        Stream.of(Systems.DEVICE_TYPE + "|" + Changes.LENS_MODEL),
                        codes.standingFor(Systems.DEVICE_TYPE, List.of(Changes.LENS_MODEL))
                                .map(SiteSearch::token))
                .collect(Collectors.joining(","));
    }

    /** Whether the request books lens surgery, in the standard's code or the hospital's. */
    public boolean isBooking(ServiceRequest request) {
        return Changes.isBooking(request)
                || request.getCode().getCoding().stream()
                        .map(codes::meanings)
                        .filter(meanings -> meanings.size() == 1)
                        .flatMap(meanings -> meanings.stream())
                        .anyMatch(each ->
                                Vocabulary.meaning(Place.BOOKING, each.coding()).isPresent());
    }

    private static String token(LocalCode code) {
        return escaped(code.system()) + "|" + escaped(code.code());
    }

    /** A comma, a bar or a dollar inside a code is escaped as FHIR's search asks, and all of it for the address. */
    private static String escaped(String text) {
        return URLEncoder.encode(text.replaceAll("([\\\\,|$])", "\\\\$1"), StandardCharsets.UTF_8);
    }
}
