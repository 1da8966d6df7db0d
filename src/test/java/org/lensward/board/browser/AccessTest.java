package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jwt.PlainJWT;
import com.nimbusds.jwt.SignedJWT;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.AuditEvent;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.board.access.TestKey;
import org.lensward.record.Shelf;

/** Who is let in by token and by session, over plain HTTP; booking-12 is changed here alone. */
class AccessTest {

    @SuppressWarnings("NullAway.Init")
    private static DemoServer server;

    @RegisterExtension
    static final BeforeAllCallback SERVER = context -> server = DemoServer.shared(context);

    private static TestKey issuer;

    private final CookieManager cookies = new CookieManager();
    private final HttpClient http =
            HttpClient.newBuilder().cookieHandler(cookies).build();

    @BeforeAll
    static void issuer() {
        issuer = server.issuer();
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
        return http.send(request.build(), BodyHandlers.ofString());
    }

    private static HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(server.url() + path));
    }

    private HttpResponse<String> call(String method, String path, String token, String body) throws Exception {
        return send(to(path).header("Authorization", "Bearer " + token)
                .header("Content-Type", "application/json")
                .method(method, BodyPublishers.ofString(body)));
    }

    @ParameterizedTest
    @CsvSource({"/api/plans/booking-12", "/api/openapi", "/fhir/anything", "/actuator/prometheus"})
    void a_call_without_a_token_is_challenged(String path) throws Exception {
        HttpResponse<String> answer = send(to(path));
        assertThat(answer.statusCode()).isEqualTo(401);
        // RFC 6750, section 3
        assertThat(answer.headers().firstValue("WWW-Authenticate").orElse("")).startsWith("Bearer");
        assertThat(answer.headers().firstValue("Content-Type").orElse(""))
                .startsWith(path.startsWith("/fhir") ? "application/fhir+json" : "application/problem+json");
    }

    /** RFC 8725: algorithm, issuer, audience, expiry and signature are each judged. */
    @Test
    void a_token_that_is_not_what_it_must_be_is_refused() throws Exception {
        var good = issuer.claims("surgeon");
        assertThat(call("GET", "/api/plans/booking-12", issuer.sign(good.build()), "")
                        .statusCode())
                .isEqualTo(200);
        // RFC 9068, section 2.1
        String access = issuer.sign(good.build(), new JOSEObjectType("at+jwt"));
        assertThat(call("GET", "/api/plans/booking-12", access, "").statusCode())
                .isEqualTo(200);
        SignedJWT guessed = new SignedJWT(new JWSHeader(JWSAlgorithm.HS256), good.build());
        guessed.sign(new MACSigner(new byte[32]));
        String[] bad = {
            issuer.sign(issuer.claims("surgeon").issuer("https://other.example").build()),
            issuer.sign(issuer.claims("surgeon").audience("another").build()),
            issuer.sign(issuer.claims("surgeon")
                    .expirationTime(Date.from(Instant.now().minusSeconds(120)))
                    .build()),
            issuer.sign(issuer.claims("surgeon").expirationTime(null).build()),
            new TestKey().sign(good.build()),
            issuer.sign(good.build(), new JOSEObjectType("secevent+jwt")),
            new PlainJWT(good.build()).serialize(),
            guessed.serialize(),
            "nonsense"
        };
        for (String token : bad) {
            assertThat(call("GET", "/api/plans/booking-12", token, "").statusCode())
                    .isEqualTo(401);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "nurse, POST, /api/plans/booking-12/confirmation, 403",
        "stock, POST, /api/checks/booking-12/pick, 403",
        "surgeon, POST, /api/bank/units, 403",
        "nurse, POST, /api/stock/orders?from=2026-12-10&to=2026-12-10, 403",
        "surgeon, GET, /api/flow, 403",
        "stranger, GET, /api/plans/booking-12, 403",
        "nurse, GET, /api/plans/booking-12, 200",
        "nurse, DELETE, /api/plans/booking-12, 403"
    })
    void a_role_may_do_its_own_work_alone(String role, String method, String path, int status) throws Exception {
        String token = issuer.sign(issuer.claims(role).build());
        assertThat(call(method, path, token, "{}").statusCode()).isEqualTo(status);
    }

    @Test
    void a_person_acts_in_no_other_name_and_leaves_a_trail() throws Exception {
        String token =
                issuer.sign(issuer.claims("surgeon").claim("name", "Ms Vale").build());
        HttpResponse<String> refused = call(
                "POST",
                "/api/plans/booking-12/refusal",
                token,
                "{\"surgeon\": \"Mr Other\", \"reason\": \"measure again\"}");
        assertThat(refused.statusCode()).isEqualTo(403);
        assertThat(refused.body()).contains("not-your-name");
        assertThat(call(
                                "POST",
                                "/api/plans/booking-12/refusal",
                                token,
                                "{\"surgeon\": \"Ms Vale\", \"reason\": \"measure again\"}")
                        .statusCode())
                .isEqualTo(200);
        AuditEvent done = trail("0");
        // IHE Basic Audit Log Patterns: the one who asked, what it concerned, how it ended
        assertThat(done.getAgentFirstRep().getWho().getDisplay()).isEqualTo("Ms Vale");
        assertThat(done.getAgentFirstRep().getRequestor()).isTrue();
        assertThat(done.getAgentFirstRep().getRoleFirstRep().getText()).isEqualTo("surgeon");
        assertThat(done.getEntityFirstRep().getWhat().getReference()).isEqualTo("ServiceRequest/booking-12");
        assertThat(done.getOutcomeDesc()).isEqualTo("POST /api/plans/{booking}/refusal");
        assertThat(trail("4").getOutcomeDesc()).isEqualTo("POST /api/plans/{booking}/refusal");
    }

    /** What was refused is told in words, for it may be a name of nothing. */
    private static String named(Reference what) {
        return String.valueOf(what.hasReference() ? what.getReference() : what.getDisplay());
    }

    private static AuditEvent trail(String outcome) throws InterruptedException {
        Instant end = Instant.now().plusSeconds(30);
        while (Instant.now().isBefore(end)) {
            Bundle found = server.record()
                    .search()
                    .byUrl("AuditEvent?_count=500&outcome=" + outcome)
                    .returnBundle(Bundle.class)
                    .execute();
            Optional<AuditEvent> event = new Shelf(found)
                    .all(AuditEvent.class)
                    .filter(each -> named(each.getEntityFirstRep().getWhat()).equals("ServiceRequest/booking-12"))
                    .findFirst();
            if (event.isPresent()) {
                return event.get();
            }
            Thread.sleep(300);
        }
        throw new AssertionError("No audit event with outcome " + outcome);
    }

    /** As a browser does it: the form's token, then the session. */
    private String signedIn(String who) throws Exception {
        String token = csrf(send(to("/sign-in")).body());
        HttpResponse<String> answer =
                form("/sign-in", "who=" + encoded(who) + "&password=" + DemoServer.PASSWORD, token);
        assertThat(answer.statusCode()).isEqualTo(302);
        return csrf(send(to("/")).body());
    }

    private HttpResponse<String> form(String path, String fields, String token) throws Exception {
        return send(to(path).header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(fields + "&_csrf=" + encoded(token))));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private static String csrf(String page) {
        Matcher found = Pattern.compile("name=\"csrf\" content=\"([^\"]+)\"").matcher(page);
        assertThat(found.find()).isTrue();
        return found.group(1);
    }

    @Test
    void a_form_without_the_sessions_token_changes_nothing() throws Exception {
        signedIn("Ms Vale");
        assertThat(form("/eye/booking-12/confirmation", "x=1", "guessed").statusCode())
                .isEqualTo(403);
        HttpResponse<String> part = send(
                to("/eye/booking-12/confirmation").header("HX-Request", "true").POST(BodyPublishers.noBody()));
        assertThat(part.statusCode()).isEqualTo(403);
        assertThat(part.headers().firstValue("HX-Retarget")).contains("#notice");
        assertThat(part.body()).contains("Nothing was written").doesNotContain("<html");
    }

    @Test
    void a_part_of_a_page_is_told_that_the_session_has_ended() throws Exception {
        HttpResponse<String> answer = send(to("/day/2026-12-10/list").header("HX-Request", "true"));
        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.headers().firstValue("HX-Trigger")).contains("session-ended");
        assertThat(answer.body()).isEmpty();
    }

    @Test
    void nothing_new_is_no_content() throws Exception {
        signedIn("Nurse Wold");
        HttpResponse<String> list = send(to("/day/2026-12-10/list").header("HX-Request", "true"));
        Matcher version = Pattern.compile("data-version=\"([^\"]+)\"").matcher(list.body());
        assertThat(version.find()).isTrue();
        HttpResponse<String> again =
                send(to("/day/2026-12-10/list").header("HX-Request", "true").header("Lensward-News", version.group(1)));
        assertThat(again.statusCode()).isEqualTo(204);
        assertThat(again.headers().firstValue("HX-Trigger").orElse("")).contains("as-of");
    }

    /** OWASP Secure Headers Project; Content Security Policy Level 3. */
    @Test
    void every_page_carries_what_protects_it() throws Exception {
        HttpResponse<String> page = send(to("/sign-in"));
        String policy = page.headers().firstValue("Content-Security-Policy").orElse("");
        assertThat(policy).contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'");
        assertThat(policy).doesNotContain("unsafe", "http:", "*");
        assertThat(page.headers().firstValue("X-Frame-Options")).contains("DENY");
        assertThat(page.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
        assertThat(page.headers().firstValue("Referrer-Policy")).contains("no-referrer");
        assertThat(page.headers().firstValue("Cache-Control").orElse("")).contains("no-store");
        assertThat(page.body()).doesNotContain(" style=", "<style", "onclick");
    }
}
