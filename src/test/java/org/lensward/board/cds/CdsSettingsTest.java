package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import jakarta.validation.Validation;
import java.net.URI;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.board.cds.CdsSettings.Client;
import org.springframework.boot.context.properties.bind.Binder;
import org.springframework.boot.context.properties.source.MapConfigurationPropertySource;

/** Closed until a hospital opens it. Common practice, no source. */
class CdsSettingsTest {

    static CdsSettings of(Map<String, Object> settings) {
        return new Binder(new MapConfigurationPropertySource(settings)).bindOrCreate("lensward.cds", CdsSettings.class);
    }

    @Test
    void with_no_settings_nobody_may_call() {
        CdsSettings settings = of(Map.of());
        assertThat(settings.clients()).isEmpty();
        assertThat(settings.open()).isFalse();
        assertThat(settings.origins()).isEmpty();
        assertThat(settings.bodyLimit().toMegabytes()).isEqualTo(5);
    }

    @Test
    void a_base_with_or_without_its_slash_gives_one_address() {
        assertThat(of(Map.of("lensward.cds.base-url", "https://a.test/b/")).endpoint("patient-view"))
                .isEqualTo(
                        of(Map.of("lensward.cds.base-url", "https://a.test/b")).endpoint("patient-view"))
                .isEqualTo("https://a.test/b/cds-services/patient-view");
    }

    @ParameterizedTest
    @CsvSource({
        "https://ward.test/keys, true",
        "file:///etc/ward.json, true",
        "http://localhost:1/keys, true",
        "http://ward.test/keys, false",
        "ftp://ward.test/keys, false",
        "ward.json, false"
    })
    void keys_come_only_over_what_nobody_can_change(URI keys, boolean taken) {
        try (var validators = Validation.buildDefaultValidatorFactory()) {
            assertThat(validators
                            .getValidator()
                            .validate(new Client("https://ward.test/", keys))
                            .isEmpty())
                    .isEqualTo(taken);
        }
    }

    @Test
    void a_setting_of_the_wrong_kind_stops_the_start() {
        assertThatThrownBy(() -> of(Map.of("lensward.cds.token-life", "long"))).hasMessageContaining("token-life");
    }
}
