package org.lensward.flow.auth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jose.jwk.gen.ECKeyGenerator;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.flow.RecordRefusal;

/** {@code kid}, {@code nbf} and {@code exp} of keys as nimbus-jose-jwt writes them (RFC 7517; nbf and exp by later registration). */
class SigningKeysTest {

    @TempDir
    private Path folder;

    private SigningKeys keys() {
        return new SigningKeys(folder, Clock.fixed(Keys.NOW, ZoneOffset.UTC));
    }

    @Test
    void the_newest_valid_key_signs_and_every_key_that_lasts_is_published_without_its_private_half() throws Exception {
        Keys.put(folder, Keys.elliptic("ended", "2025-01-01T00:00:00Z", "2026-11-01T00:00:00Z"));
        Keys.put(folder, Keys.elliptic("old", "2026-01-01T00:00:00Z", "2026-12-31T00:00:00Z"));
        Keys.put(folder, Keys.elliptic("new", "2026-11-01T00:00:00Z", "2027-06-01T00:00:00Z"));
        Keys.put(folder, Keys.elliptic("next", "2026-12-01T00:00:00Z", "2027-12-31T00:00:00Z"));
        Files.writeString(folder.resolve("README"), "not a key");

        assertThat(keys().newest(SmartDiscovery.OURS).getKeyID()).isEqualTo("new");
        assertThat(keys().published().getKeys())
                .extracting(JWK::getKeyID)
                .containsExactlyInAnyOrder("old", "new", "next");
        assertThat(keys().published().getKeys()).noneMatch(JWK::isPrivate);
    }

    @Test
    void a_server_that_takes_rsa_alone_gets_an_rsa_key() throws Exception {
        Keys.put(folder, Keys.elliptic("curve", "2026-11-01T00:00:00Z", "2027-06-01T00:00:00Z"));
        Keys.put(folder, Keys.rsa("rsa", "2026-01-01T00:00:00Z", "2027-06-01T00:00:00Z"));
        assertThat(keys().newest(Set.of(JWSAlgorithm.RS384)).getKeyID()).isEqualTo("rsa");
    }

    @Test
    void without_a_valid_key_the_finding_says_so() throws Exception {
        Keys.put(folder, Keys.elliptic("ended", "2025-01-01T00:00:00Z", "2026-11-01T00:00:00Z"));
        assertThatThrownBy(() -> keys().newest(SmartDiscovery.OURS))
                .isInstanceOf(RecordRefusal.class)
                .hasMessageContaining("record-key-missing");
    }

    @Test
    void a_weak_a_public_and_a_nameless_key_are_refused_and_never_shown() throws Exception {
        JWK weak =
                Keys.put(folder, new ECKeyGenerator(Curve.P_256).keyID("weak").generate());
        String secret = weak.toECKey().getD().toString();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> keys().published())
                .withMessageContaining("weak.jwk")
                .satisfies(refusal -> assertThat(refusal.getMessage()).doesNotContain(secret));
        Files.writeString(
                folder.resolve("weak.jwk"),
                Keys.elliptic("weak", "2026-01-01T00:00:00Z", "2027-01-01T00:00:00Z")
                        .toPublicJWK()
                        .toJSONString());
        assertThatIllegalArgumentException().isThrownBy(() -> keys().published());
        Files.writeString(folder.resolve("weak.jwk"), "{\"kty\":\"EC\",\"d\":\"" + secret + "\"");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> keys().published())
                .withNoCause()
                .withMessageNotContaining(secret);
    }
}
