package org.lensward.flow.auth;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.SpringApplication;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.StandardEnvironment;

class SecretPlacesTest {

    private static void start(String source, String name, String value) {
        StandardEnvironment environment = new StandardEnvironment();
        environment.getPropertySources().replace(source, new MapPropertySource(source, Map.of(name, value)));
        new SecretPlaces().postProcessEnvironment(environment, new SpringApplication());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lensward.record-access.basic.password",
                "spring.ssl.bundle.jks.record.keystore.password",
                "spring.artemis.password",
                "spring.security.oauth2.client.registration.hospital.client-secret",
                "spring.ssl.bundle.pem.record.keystore.private-key"
            })
    void a_secret_among_the_arguments_stops_the_start_and_is_not_repeated(String name) {
        assertThatIllegalStateException()
                .isThrownBy(() -> start("systemProperties", name, "open sesame"))
                .withMessageContaining(name)
                .withMessageNotContaining("open sesame");
    }

    @Test
    void the_place_of_a_secret_may_stand_there() {
        assertThatCode(() ->
                        start("systemProperties", "lensward.record-access.basic.password", "file:/run/secrets/record"))
                .doesNotThrowAnyException();
    }

    @Test
    void a_secret_may_stand_in_the_environment() {
        assertThatCode(() -> start("systemEnvironment", "lensward.record-access.basic.password", "open sesame"))
                .doesNotThrowAnyException();
    }

    @Test
    void other_programs_arguments_are_not_ours_to_judge() {
        assertThatCode(() -> start("systemProperties", "javax.net.ssl.keyStorePassword", "changeit"))
                .doesNotThrowAnyException();
    }
}
