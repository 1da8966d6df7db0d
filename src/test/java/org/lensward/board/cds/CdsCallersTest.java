package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;

import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.ECDSASigner;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.PlainJWT;
import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.board.ServedDay;
import org.lensward.board.ServedDayExtension;

/** Who may call: the rules of CDS Hooks 2.0, "Trusting CDS Clients" and "JWT Signing Algorithm". Tokens are made by Nimbus. */
@ExtendWith(ServedDayExtension.class)
class CdsCallersTest {

    private static final String SERVICE = "patient-view";

    private final ServedDay day;

    CdsCallersTest(ServedDay day) {
        this.day = day;
    }

    private HttpResponse<String> call(String token) {
        return Hooks.post(day, SERVICE, Hooks.call(day, SERVICE, "nobody-here").toString(), token);
    }

    private static Date in(long seconds) {
        return Date.from(Instant.now().plusSeconds(seconds));
    }

    private static Arguments refused(String why, String token) {
        return Arguments.of(why, token);
    }

    static Stream<Arguments> tokens() throws Exception {
        JWSHeader header = CallingClients.ecHeader().build();
        JWSHeader shared =
                new JWSHeader.Builder(JWSAlgorithm.HS384).keyID("ward-1").build();
        byte[] publicKey = CallingClients.WARD.toPublicJWK().toJSONString().getBytes(StandardCharsets.UTF_8);
        return Stream.of(
                refused("expired", ward(claims -> claims.issueTime(in(-600)).expirationTime(in(-120)))),
                refused("without exp", ward(claims -> claims.expirationTime(null))),
                refused("without iat", ward(claims -> claims.issueTime(null))),
                refused("issued in the future", ward(claims -> claims.issueTime(in(300)))),
                refused("valid for a day", ward(claims -> claims.expirationTime(in(86_400)))),
                refused("without jti", ward(claims -> claims.jwtID(null))),
                refused(
                        "for another service",
                        ward(claims -> claims.audience(CallingClients.BASE + "/cds-services/x"))),
                refused("for nobody", ward(claims -> claims.audience((String) null))),
                refused("of an unknown issuer", ward(claims -> claims.issuer("https://nobody.test/"))),
                refused("of no issuer", ward(claims -> claims.issuer(null))),
                refused("of another client's issuer", ward(claims -> claims.issuer(CallingClients.WITH_ADDRESS))),
                refused(
                        "signed by a stranger with the same key name",
                        CallingClients.sign(
                                header,
                                CallingClients.claims(SERVICE).build(),
                                new ECDSASigner(CallingClients.ec("ward-1")))),
                refused(
                        "naming no key",
                        CallingClients.sign(
                                new JWSHeader(JWSAlgorithm.ES384),
                                CallingClients.claims(SERVICE).build())),
                refused(
                        "signed with the public key as a shared secret",
                        CallingClients.sign(
                                shared, CallingClients.claims(SERVICE).build(), new MACSigner(publicKey))),
                refused(
                        "not signed (alg none)",
                        new PlainJWT(CallingClients.claims(SERVICE).build()).serialize()),
                refused("no token at all", "letters"),
                refused("two dots", ".."),
                refused(
                        "naming its own keys (jku)",
                        CallingClients.signRsa(
                                clinic().jwkURL(URI.create("https://thief.test/keys"))
                                        .build(),
                                CallingClients.claims(SERVICE)
                                        .issuer(CallingClients.WITH_ADDRESS)
                                        .build())),
                refused(
                        "naming an unknown key",
                        CallingClients.signRsa(
                                new JWSHeader.Builder(JWSAlgorithm.RS384)
                                        .keyID("clinic-2")
                                        .build(),
                                CallingClients.claims(SERVICE)
                                        .issuer(CallingClients.WITH_ADDRESS)
                                        .build())));
    }

    private static JWSHeader.Builder clinic() {
        return new JWSHeader.Builder(JWSAlgorithm.RS384)
                .type(JOSEObjectType.JWT)
                .keyID(CallingClients.CLINIC.getKeyID());
    }

    private static String ward(UnaryOperator<JWTClaimsSet.Builder> but) {
        return CallingClients.sign(
                CallingClients.ecHeader().build(),
                but.apply(CallingClients.claims(SERVICE)).build());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("tokens")
    void a_token_is_refused(String why, String token) {
        HttpResponse<String> answer = call(token);
        assertThat(answer.statusCode()).as(why + ": " + answer.body()).isEqualTo(401);
        assertThat(answer.headers().firstValue("WWW-Authenticate")).contains("Bearer");
    }

    @Test
    void a_call_without_a_token_is_refused() {
        HttpResponse<String> answer = day.send(day.to("/cds-services/" + SERVICE)
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{}")));
        assertThat(answer.statusCode()).isEqualTo(401);
    }

    @Test
    void a_good_token_is_taken_once() {
        String token = CallingClients.token(SERVICE);
        assertThat(call(token).statusCode()).isEqualTo(200);
        assertThat(call(token).statusCode()).isEqualTo(401);
    }

    @Test
    void a_client_that_serves_its_keys_is_trusted_by_them() {
        String token = CallingClients.signRsa(
                clinic().jwkURL(CallingClients.CLINIC_KEYS).build(),
                CallingClients.claims(SERVICE)
                        .issuer(CallingClients.WITH_ADDRESS)
                        .build());
        assertThat(call(token).statusCode()).isEqualTo(200);
    }

    @Test
    void a_malformed_call_is_refused_without_repeating_it() {
        for (String body : new String[] {
            "{",
            "[]",
            "",
            "{\"hook\":\"patient-view\",\"hookInstance\":\"i\"}",
            "{\"hook\":\"patient-view\",\"context\":{\"patientId\":\"p\"}}",
            "{\"hook\":\"patient-view\",\"hookInstance\":\"i\",\"context\":{\"patientId\":\"p&_include=*\"}}",
            "{\"hook\":\"order-sign\",\"hookInstance\":\"i\",\"context\":{\"patientId\":\"p\"}}",
            "{\"hook\":\"patient-view\",\"hookInstance\":\"i\",\"fhirServer\":\"a b\",\"context\":{\"patientId\":\"p\"}}",
            "{\"hook\":\"patient-view\",\"hookInstance\":\"i\",\"context\":{\"patientId\":\"p\"},"
                    + "\"prefetch\":{\"plans\":{\"resourceType\":\"Secretname\"}}}"
        }) {
            HttpResponse<String> answer = Hooks.post(day, SERVICE, body);
            assertThat(answer.statusCode()).as(body).isEqualTo(400);
            assertThat(answer.body()).doesNotContain("Secretname");
        }
    }

    @Test
    void an_unknown_service_and_a_call_too_long_are_refused() {
        assertThat(Hooks.post(day, "medication-prescribe", "{}").statusCode()).isEqualTo(404);
        assertThat(Hooks.post(day, SERVICE, " ".repeat(250_000)).statusCode()).isEqualTo(413);
    }

    @Test
    void a_browser_may_call_from_the_named_origin_and_from_no_other() {
        assertThat(preflight(CallingClients.ORIGIN).headers().firstValue("Access-Control-Allow-Origin"))
                .contains(CallingClients.ORIGIN);
        assertThat(preflight("https://elsewhere.test").statusCode()).isEqualTo(403);
    }

    private HttpResponse<String> preflight(String origin) {
        return day.send(day.to("/cds-services/" + SERVICE)
                .header("Origin", origin)
                .header("Access-Control-Request-Method", "POST")
                .header("Access-Control-Request-Headers", "authorization,content-type")
                .method("OPTIONS", BodyPublishers.noBody()));
    }
}
