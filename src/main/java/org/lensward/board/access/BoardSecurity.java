package org.lensward.board.access;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.flow.RecordClient;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.autoconfigure.security.servlet.SecurityAutoConfiguration;
import org.springframework.boot.autoconfigure.security.servlet.SecurityFilterAutoConfiguration;
import org.springframework.boot.autoconfigure.web.ServerProperties;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.Environment;
import org.springframework.security.authentication.AnonymousAuthenticationToken;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.savedrequest.HttpSessionRequestCache;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.RequestHeaderRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Three ways in, each closed unless it is set up: CDS Hooks, which judge their own tokens; calls of programs, by bearer token and without
 * a session; pages, by sign-in and session.
 */
@Configuration(proxyBeanMethods = false)
@Import(AccessLog.class)
@ImportAutoConfiguration({SecurityAutoConfiguration.class, SecurityFilterAutoConfiguration.class})
@EnableConfigurationProperties({AccessSettings.class, ServerProperties.class})
public class BoardSecurity {

    private static final String CONTENT =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " connect-src 'self'; font-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

    private final AccessSettings settings;
    private final Openness openness;

    BoardSecurity(AccessSettings settings, ServerProperties server) {
        this.settings = settings;
        this.openness = Openness.of(settings, server);
    }

    @Bean
    AuditTrail auditTrail(RecordClient client, Clock clock) {
        return new AuditTrail(client, clock);
    }

    @Bean
    WebMvcConfigurer audited(AuditTrail trail) {
        return new WebMvcConfigurer() {
            @Override
            public void addInterceptors(InterceptorRegistry registry) {
                registry.addInterceptor(trail);
            }
        };
    }

    @Bean
    Doors doors(ObjectProvider<DemoUsers> demo) {
        Optional<DemoUsers> users = demo.stream().findFirst();
        return new Doors(
                settings.people() != null,
                users.map(each -> DemoUsers.PEOPLE).orElse(List.of()),
                users.map(DemoUsers::password).orElse(""));
    }

    @Bean
    @Order(1)
    SecurityFilterChain hooks(HttpSecurity http) throws Exception {
        return http.securityMatcher("/cds-services", "/cds-services/**")
                .authorizeHttpRequests(requests -> requests.anyRequest().permitAll())
                .csrf(csrf -> csrf.disable())
                .sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .build();
    }

    /** Figures at a port of their own, which only the monitoring reaches, need no token; at the common port they do. */
    @Bean
    RequestMatcher monitoring(Environment settings) {
        int port = settings.getProperty("management.server.port", Integer.class, 0);
        boolean own = port != 0 && port != settings.getProperty("server.port", Integer.class, 0);
        return request ->
                own && request.getLocalPort() == port && request.getRequestURI().startsWith("/actuator/");
    }

    @Bean
    @Order(2)
    SecurityFilterChain calls(HttpSecurity http, ObjectMapper json, RequestMatcher monitoring) throws Exception {
        CallRefusals refusals = new CallRefusals(json);
        http.securityMatcher("/api/**", "/fhir/**", "/actuator/**")
                .authorizeHttpRequests(requests -> Rules.apply(monitoring, requests))
                .csrf(csrf -> csrf.disable())
                .sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .exceptionHandling(
                        refused -> refused.authenticationEntryPoint(refusals).accessDeniedHandler(refusals));
        if (settings.machines() != null) {
            MachineTokens tokens = new MachineTokens(settings.machines(), new GrantedRoles(settings.roles()));
            http.oauth2ResourceServer(server -> server.authenticationEntryPoint(refusals)
                    .accessDeniedHandler(refusals)
                    .jwt(jwt -> jwt.decoder(tokens.decoder()).jwtAuthenticationConverter(tokens::caller)));
        }
        return anybodyIfOpen(http).build();
    }

    @Bean
    @Order(3)
    SecurityFilterChain pages(HttpSecurity http, ObjectProvider<DemoUsers> demo, Clock clock, RequestMatcher monitoring)
            throws Exception {
        PageRefusals refusals = new PageRefusals();
        HttpSessionRequestCache cache = new HttpSessionRequestCache();
        cache.setMatchingRequestParameterName(null);
        cache.setRequestMatcher(request -> "GET".equals(request.getMethod())
                && !new RequestHeaderRequestMatcher("HX-Request").matches(request)
                && !request.getRequestURI().startsWith("/access/"));
        http.authorizeHttpRequests(requests -> Rules.apply(monitoring, requests))
                .requestCache(saved -> saved.requestCache(cache))
                .exceptionHandling(
                        refused -> refused.authenticationEntryPoint(refusals).accessDeniedHandler(refusals))
                .headers(headers -> headers.contentSecurityPolicy(content -> content.policyDirectives(CONTENT))
                        .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.NO_REFERRER))
                        .frameOptions(frames -> frames.deny()))
                .logout(out -> out.logoutRequestMatcher(
                                PathPatternRequestMatcher.withDefaults().matcher("/sign-out"))
                        .logoutSuccessUrl("/sign-in?out"))
                .addFilterBefore(new IdleFilter(settings.idle(), clock), AuthorizationFilter.class);
        demo.ifAvailable(users -> byForm(http, users));
        if (settings.people() != null) {
            byHospital(http);
        }
        return anybodyIfOpen(http).build();
    }

    private static void byForm(HttpSecurity http, DemoUsers users) {
        try {
            http.userDetailsService(users)
                    .formLogin(form ->
                            form.loginPage("/sign-in").usernameParameter("who").failureUrl("/sign-in?refused"));
        } catch (Exception refused) {
            throw new IllegalStateException("Sign-in by form cannot be set up", refused);
        }
    }

    private void byHospital(HttpSecurity http) throws Exception {
        HospitalSignIn hospital =
                new HospitalSignIn(Objects.requireNonNull(settings.people()), new GrantedRoles(settings.roles()));
        http.oauth2Login(login -> login.loginPage("/sign-in")
                .failureUrl("/sign-in?refused")
                .clientRegistrationRepository(hospital)
                .userInfoEndpoint(user -> user.oidcUserService(hospital::person)));
    }

    private HttpSecurity anybodyIfOpen(HttpSecurity http) throws Exception {
        return openness.open() ? http.anonymous(anybody -> anybody.authenticationFilter(new AnybodyHere())) : http;
    }

    /** Somebody at this machine, with every role. */
    private static final class AnybodyHere extends AnonymousAuthenticationFilter {

        private static final String KEY = "open";
        private static final List<GrantedAuthority> ALL =
                Stream.of(Role.values()).map(Role::authority).toList();

        AnybodyHere() {
            super(KEY);
        }

        @Override
        protected Authentication createAuthentication(HttpServletRequest request) {
            return new Anybody(KEY, "somebody at this machine", ALL);
        }
    }

    private static final class Anybody extends AnonymousAuthenticationToken implements Program {

        private static final long serialVersionUID = 1;

        Anybody(String key, Object principal, List<GrantedAuthority> granted) {
            super(key, principal, granted);
        }
    }
}
