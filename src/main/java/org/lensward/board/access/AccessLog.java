package org.lensward.board.access;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.event.EventListener;
import org.springframework.security.authentication.event.AbstractAuthenticationFailureEvent;
import org.springframework.security.authentication.event.AuthenticationFailureProviderNotFoundEvent;
import org.springframework.security.authentication.event.InteractiveAuthenticationSuccessEvent;

/** Says in the log that somebody signed in or could not, and why not; never who. */
final class AccessLog {

    private static final Logger LOG = LoggerFactory.getLogger(AccessLog.class);

    @EventListener
    void signedIn(InteractiveAuthenticationSuccessEvent event) {
        LOG.info("Somebody signed in");
    }

    @EventListener
    void refused(AbstractAuthenticationFailureEvent event) {
        if (event instanceof AuthenticationFailureProviderNotFoundEvent) {
            return; // one of two ways to judge a token does not know it; the other one tells
        }
        LOG.warn("Sign-in refused: {}", event.getException().getClass().getSimpleName());
    }
}
