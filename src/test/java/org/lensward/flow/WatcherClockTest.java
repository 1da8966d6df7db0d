package org.lensward.flow;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.containing;
import static com.github.tomakehurst.wiremock.client.WireMock.post;
import static com.github.tomakehurst.wiremock.client.WireMock.postRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;

import com.github.tomakehurst.wiremock.WireMockServer;
import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import com.github.tomakehurst.wiremock.core.WireMockConfiguration;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lensward.record.Fhir;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteSearch;

/** A record whose clock is not ours. What a Date header is: RFC 9110 section 6.6.1. */
class WatcherClockTest {

    private static final Pattern SINCE = Pattern.compile("_lastUpdated=ge([0-9TZ:.-]+)");
    private static final String NOTHING = found("");

    private final WireMockServer server =
            new WireMockServer(WireMockConfiguration.options().dynamicPort());

    @BeforeEach
    void start() {
        server.start();
    }

    @AfterEach
    void stop() {
        server.stop();
    }

    private static String found(String entries) {
        return "{\"response\":{\"status\":\"200 OK\"},\"resource\":{\"resourceType\":\"Bundle\",\"type\":\"searchset\","
                + "\"entry\":[" + entries + "]}}";
    }

    private static String booking(String updated) {
        return "{\"resource\":{\"resourceType\":\"ServiceRequest\",\"id\":\"b1\",\"meta\":{\"versionId\":\"1\","
                + "\"lastUpdated\":\"" + updated + "\"},\"status\":\"active\",\"code\":{\"coding\":[{\"system\":"
                + "\"http://snomed.info/sct\",\"code\":\"415089008\"}]},\"subject\":{\"reference\":\"Patient/p1\"}}}";
    }

    /** The record as it answers a look: first the bookings, then the changes, those of bookings first. */
    private Watcher watching(Duration ahead, String changedBookings) {
        server.stubFor(post(urlPathEqualTo("/fhir")).willReturn(answer(ahead, List.of(NOTHING))));
        server.stubFor(post(urlPathEqualTo("/fhir"))
                .withRequestBody(containing("_lastUpdated"))
                .willReturn(answer(
                        ahead,
                        Stream.concat(
                                        Stream.of(found(changedBookings)),
                                        Collections.nCopies(Watcher.WATCHED.size() - 1, NOTHING).stream())
                                .toList())));
        return new Watcher(
                RecordClient.at(URI.create(server.baseUrl() + "/fhir"), Fhir.r4()),
                new AdapterSettings.Watch(Duration.ofSeconds(5), Duration.ofSeconds(150), 500),
                new SiteSearch(SiteCodes.none()),
                Clock.systemUTC());
    }

    private static ResponseDefinitionBuilder answer(Duration ahead, List<String> entries) {
        String date = DateTimeFormatter.RFC_1123_DATE_TIME.format(
                Instant.now().plus(ahead).atOffset(ZoneOffset.UTC));
        return aResponse()
                .withHeader("Date", date)
                .withHeader("Content-Type", "application/fhir+json")
                .withBody("{\"resourceType\":\"Bundle\",\"type\":\"batch-response\",\"entry\":["
                        + String.join(",", entries) + "]}");
    }

    private Instant askedSince() {
        String body = server.findAll(
                        postRequestedFor(urlPathEqualTo("/fhir")).withRequestBody(containing("_lastUpdated")))
                .get(0)
                .getBodyAsString();
        Matcher since = SINCE.matcher(body);
        assertThat(since.find()).isTrue();
        return Instant.parse(since.group(1));
    }

    private static void look(Watcher watcher) {
        assertThat(watcher.look()).isEmpty();
        watcher.queued();
    }

    @Test
    void behind_ours_changes_are_asked_for_by_its_clock() {
        Watcher watcher = watching(Duration.ofMinutes(-10), "");
        Instant before = Instant.now();
        look(watcher);
        look(watcher);
        assertThat(Duration.between(askedSince(), before)).isBetween(Duration.ofMinutes(12), Duration.ofMinutes(14));
    }

    @Test
    void before_ours_nothing_is_left_out() {
        Watcher watcher = watching(Duration.ofMinutes(10), "");
        Instant before = Instant.now();
        look(watcher);
        look(watcher);
        assertThat(Duration.between(askedSince(), before)).isBetween(Duration.ofMinutes(2), Duration.ofMinutes(3));
    }

    @Test
    void a_change_dated_in_the_future_is_queued_once() {
        Watcher watcher = watching(Duration.ZERO, booking("2040-01-01T00:00:00Z"));
        look(watcher);
        assertThat(watcher.look()).containsExactly("ServiceRequest/b1 Patient/p1");
        watcher.queued();
        look(watcher);
    }

    @Test
    void a_transaction_that_surfaces_late_is_found_within_the_overlap() {
        Watcher watcher =
                watching(Duration.ZERO, booking(Instant.now().minusSeconds(100).toString()));
        look(watcher);
        assertThat(watcher.look()).hasSize(1);
        assertThat(Duration.between(askedSince(), Instant.now())).isGreaterThan(Duration.ofSeconds(149));
    }

    @Test
    void a_look_whose_bookings_were_not_queued_finds_them_again() {
        Watcher watcher = watching(Duration.ZERO, booking("2026-11-25T08:00:00Z"));
        look(watcher);
        assertThat(watcher.look()).hasSize(1);
        assertThat(watcher.look()).hasSize(1);
    }
}
