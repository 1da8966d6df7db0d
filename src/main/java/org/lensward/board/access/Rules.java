package org.lensward.board.access;

import static org.lensward.board.access.Role.INTEGRATOR;
import static org.lensward.board.access.Role.NURSE;
import static org.lensward.board.access.Role.STOCK;
import static org.lensward.board.access.Role.SURGEON;

import jakarta.servlet.DispatcherType;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AuthorizeHttpRequestsConfigurer;
import org.springframework.security.web.util.matcher.RequestMatcher;

/** The one table of who may do what, for pages and calls alike. What is not named here, everyone who has signed in may read. */
final class Rules {

    /** Seen by anybody: how to sign in, what the page looks like, keys and descriptions that hold no patient. */
    private static final String[] PUBLIC = {
        "/sign-in",
        "/lensward.css",
        "/lensward.svg",
        "/*.js",
        "/webjars/**",
        "/.well-known/**",
        "/fhir/metadata",
        "/actuator/health/**",
        // these show a secret of their own
        "/api/hints/**"
    };

    private Rules() {}

    /**
     * Applies the table.
     *
     * @param monitoring what comes in at a port that only the monitoring reaches
     */
    static void apply(
            RequestMatcher monitoring,
            AuthorizeHttpRequestsConfigurer<HttpSecurity>.AuthorizationManagerRequestMatcherRegistry requests) {
        requests.dispatcherTypeMatchers(DispatcherType.FORWARD, DispatcherType.ERROR)
                .permitAll()
                .requestMatchers(PUBLIC)
                .permitAll()
                .requestMatchers(monitoring)
                .permitAll()
                .requestMatchers("/flow/**", "/api/flow/**", "/actuator/**")
                .hasRole(INTEGRATOR.name())
                .requestMatchers("/check/**")
                .hasAnyRole(Role.names(NURSE, SURGEON))
                .requestMatchers(HttpMethod.POST, "/api/labels", "/fhir/**")
                .hasAnyRole(Role.names(Role.values()))
                .requestMatchers(HttpMethod.POST, "/api/bookings/*/replan")
                .hasAnyRole(Role.names(SURGEON, INTEGRATOR))
                .requestMatchers(HttpMethod.POST, "/api/checks/**")
                .hasAnyRole(Role.names(NURSE, SURGEON))
                .requestMatchers(HttpMethod.POST, "/eye/**", "/api/plans/**", "/outcomes/**", "/api/outcomes/**")
                .hasRole(SURGEON.name())
                .requestMatchers(HttpMethod.POST, "/bank/**", "/api/bank/**", "/api/stock/**")
                .hasRole(STOCK.name())
                .requestMatchers(HttpMethod.POST, "/day/**")
                .hasAnyRole(Role.names(Role.values()))
                .requestMatchers(HttpMethod.GET, "/**")
                .hasAnyRole(Role.names(Role.values()))
                .anyRequest()
                .denyAll();
    }
}
