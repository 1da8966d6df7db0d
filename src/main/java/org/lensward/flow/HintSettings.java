package org.lensward.flow;

import org.lensward.flow.auth.Secret;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Notifications of FHIR Subscriptions, under {@code lensward.hint.*}. They are hints that something changed; what changed is looked up.
 *
 * @param secret what a notification must show in the header {@code X-Lensward-Hint}; empty takes none
 * @param endpoint our address as the record sees it; if given, the Subscriptions are written into the record at start
 */
@ConfigurationProperties("lensward.hint")
public record HintSettings(
        @DefaultValue("") Secret secret, @DefaultValue("") String endpoint) {

    /** The header in which a notification shows the secret. */
    public static final String HEADER = "X-Lensward-Hint";
}
