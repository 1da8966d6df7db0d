package org.lensward.faults;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.any;
import static com.github.tomakehurst.wiremock.client.WireMock.anyUrl;
import static com.github.tomakehurst.wiremock.core.WireMockConfiguration.options;

import com.github.tomakehurst.wiremock.WireMockServer;
import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import com.github.tomakehurst.wiremock.extension.ResponseDefinitionTransformerV2;
import com.github.tomakehurst.wiremock.http.Request;
import com.github.tomakehurst.wiremock.http.ResponseDefinition;
import com.github.tomakehurst.wiremock.stubbing.ServeEvent;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lensward.faults.Fault.At;

/** A real record behind a server that lets requests through, or misbehaves as the faults say towards the bookings they name. */
final class MisbehavingRecord implements AutoCloseable {

    private static final HttpClient HTTP = HttpClient.newHttpClient();

    /** A gathering asks for the booking by its name; a plan names it as what it is based on. */
    private static final Pattern BOOKING =
            Pattern.compile("\"(?:url|reference)\":\\s*\"ServiceRequest/booking-([a-z0-9-]+)\"");

    private final Map<String, Fault> faults = new ConcurrentHashMap<>();
    private final Map<String, AtomicInteger> counts = new ConcurrentHashMap<>();
    private final String record;
    private final WireMockServer server;
    private volatile boolean blind;

    MisbehavingRecord(String url) {
        record = url.replaceFirst("/fhir$", "");
        server = new WireMockServer(options()
                .dynamicPort()
                .containerThreads(30)
                .disableRequestJournal()
                .extensions(new Behaviour()));
        server.start();
        server.stubFor(any(anyUrl()).willReturn(aResponse()));
    }

    void misbehave(Fault fault) {
        faults.put(fault.name(), fault);
    }

    /** While it is so, it does not say what changed. */
    void hidesChanges(boolean hides) {
        blind = hides;
    }

    void behave() {
        faults.clear();
    }

    String url() {
        return "http://localhost:" + server.port() + "/fhir";
    }

    /** How often that booking was asked about, or its plan told; or, by a path, how often that was asked for. */
    int count(At at, String name) {
        return counter(at + name).get();
    }

    private AtomicInteger counter(String key) {
        return counts.computeIfAbsent(key, each -> new AtomicInteger());
    }

    private final class Behaviour implements ResponseDefinitionTransformerV2 {

        @Override
        public ResponseDefinition transform(ServeEvent event) {
            Request request = event.getRequest();
            if (request.getUrl().startsWith("/fhir/page-")) {
                counter(At.GATHER + request.getUrl().replaceFirst("\\?.*", "")).incrementAndGet();
                return page(request.getUrl()).build();
            }
            String body = request.getBodyAsString();
            if (blind && body.contains("_lastUpdated=")) {
                return fhir().withBody(Fault.OUTCOME).withStatus(500).build();
            }
            At at = body.contains("\"type\":\"transaction\"") ? At.PUBLISH : At.GATHER;
            Matcher named = BOOKING.matcher(body);
            if (!named.find()) {
                return passed(request, body).build();
            }
            int turn = counter(at + named.group(1)).incrementAndGet();
            return Optional.ofNullable(faults.get(named.group(1)))
                    .filter(fault -> fault.at() == at && turn <= fault.times())
                    .map(fault -> misbehaved(fault.how(), request))
                    .orElseGet(() -> passed(request, body))
                    .build();
        }

        @Override
        public String getName() {
            return "behaviour";
        }
    }

    private ResponseDefinitionBuilder page(String path) {
        if (path.startsWith("/fhir/page-vanished")) {
            return aResponse().withStatus(410);
        }
        String next = path.startsWith("/fhir/page-again")
                ? ",\"link\":[{\"relation\":\"next\",\"url\":\"" + url() + "/page-again\"}]"
                : "";
        return fhir().withBody("{\"resourceType\":\"Bundle\",\"type\":\"searchset\"" + next + "}");
    }

    private ResponseDefinitionBuilder misbehaved(Fault.How how, Request request) {
        String body = request.getBodyAsString();
        if (how instanceof Fault.Says says) {
            ResponseDefinitionBuilder answer = fhir().withStatus(says.status()).withBody(Fault.OUTCOME);
            for (int each = 0; each < says.headers().length; each += 2) {
                answer.withHeader(says.headers()[each], value(says.headers()[each + 1]));
            }
            return answer;
        }
        if (how instanceof Fault.Babbles babbles) {
            return aResponse().withHeader("Content-Type", babbles.type()).withBody(babbles.body());
        }
        if (how instanceof Fault.Breaks breaks) {
            return aResponse().withFault(breaks.fault());
        }
        if (how instanceof Fault.Sleeps sleeps) {
            return passed(request, body).withFixedDelay(sleeps.millis());
        }
        if (how instanceof Fault.Mishears mishears) {
            return passed(request, mishears.request().apply(body));
        }
        ResponseDefinition answer = passed(request, body).build();
        return how instanceof Fault.Bends bends
                ? fhir().withBody(bends.answer().apply(answer.getBody(), url()))
                : aResponse().withFault(com.github.tomakehurst.wiremock.http.Fault.CONNECTION_RESET_BY_PEER);
    }

    private static String value(String header) {
        return header.equals(Fault.IN_TWO_SECONDS)
                ? DateTimeFormatter.RFC_1123_DATE_TIME.format(
                        Instant.now().plusSeconds(2).atOffset(ZoneOffset.UTC))
                : header;
    }

    private static ResponseDefinitionBuilder fhir() {
        return aResponse().withHeader("Content-Type", "application/fhir+json");
    }

    private ResponseDefinitionBuilder passed(Request request, String body) {
        HttpRequest onward = HttpRequest.newBuilder(URI.create(record + request.getUrl()))
                .header("Content-Type", "application/fhir+json")
                .header("Accept", "application/fhir+json")
                .method(request.getMethod().getName(), HttpRequest.BodyPublishers.ofString(body))
                .build();
        try {
            HttpResponse<String> answer = HTTP.send(onward, HttpResponse.BodyHandlers.ofString());
            return fhir().withStatus(answer.statusCode()).withBody(answer.body());
        } catch (IOException away) {
            return aResponse().withStatus(502);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return aResponse().withStatus(502);
        }
    }

    @Override
    public void close() {
        server.stop();
    }
}
