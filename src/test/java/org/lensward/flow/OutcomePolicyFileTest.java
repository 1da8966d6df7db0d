package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.outcome.OutcomePolicy;

/** The outcome policy is read as the policy is: whole or not at all. */
class OutcomePolicyFileTest {

    @TempDir
    Path folder;

    private static String shippedText() throws IOException {
        try (InputStream file = OutcomePolicyFileTest.class.getResourceAsStream("/outcome-policy.yaml")) {
            return new String(Objects.requireNonNull(file).readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private Path written(String text) throws IOException {
        return Files.writeString(folder.resolve("outcome-policy.yaml"), text);
    }

    @Test
    void a_hospitals_own_replaces_the_shipped_one() throws IOException {
        assertThat(OutcomePolicyFile.orShipped(null)).isEqualTo(OutcomePolicyFile.shipped());
        OutcomePolicy own = OutcomePolicyFile.orShipped(written(shippedText().replace("21 days", "14 days")));
        assertThat(own.refraction().earliest().value().value()).isEqualTo(14);
    }

    @Test
    void a_missing_or_an_unknown_value_is_refused_by_name() throws IOException {
        Path missing = written(shippedText().replaceAll("(?m)^  earliest: .*\n", ""));
        assertThatThrownBy(() -> OutcomePolicyFile.orShipped(missing))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("earliest");
        Path unknown = written(shippedText() + "colour: blue\n");
        assertThatThrownBy(() -> OutcomePolicyFile.orShipped(unknown)).hasMessageContaining("colour");
    }

    /** A window that ends before it begins, or a preferred day outside it, would count no eye or the wrong one. */
    @Test
    void a_policy_that_contradicts_itself_is_refused() throws IOException {
        Path turned = written(shippedText().replace("latest: {value: 90 days", "latest: {value: 20 days"));
        assertThatThrownBy(() -> OutcomePolicyFile.orShipped(turned)).isInstanceOf(IllegalArgumentException.class);
        Path unordered = written(shippedText().replace("{value: 22.00 mm", "{value: 25.00 mm"));
        assertThatThrownBy(() -> OutcomePolicyFile.orShipped(unordered)).isInstanceOf(IllegalArgumentException.class);
        Path halved = written(shippedText().replace("odds: {value: 2 1", "odds: {value: 0.5 1"));
        assertThatThrownBy(() -> OutcomePolicyFile.orShipped(halved)).isInstanceOf(IllegalArgumentException.class);
    }
}
