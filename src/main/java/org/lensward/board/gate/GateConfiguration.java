package org.lensward.board.gate;

import com.fasterxml.jackson.core.StreamReadConstraints;
import jakarta.servlet.Filter;
import jakarta.servlet.http.HttpServletRequest;
import java.security.Principal;
import java.util.Optional;
import org.springframework.boot.autoconfigure.jackson.Jackson2ObjectMapperBuilderCustomizer;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.Ordered;

/** Limits before sign-in by address, behind it by person. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(LimitSettings.class)
@Import(PublicKeys.class)
public class GateConfiguration {

    /** No request of ours nests deeper, or holds a longer number or text. */
    private static final StreamReadConstraints BOUNDS = StreamReadConstraints.builder()
            .maxNestingDepth(32)
            .maxNumberLength(32)
            .maxStringLength(100_000)
            .build();

    private static final int BEFORE_SIGN_IN = Ordered.HIGHEST_PRECEDENCE + 10;

    @Bean
    FilterRegistrationBean<Filter> addressLimit(LimitSettings limits) {
        return at(BEFORE_SIGN_IN, new RateLimit(limits.perAddress(), request -> Optional.of(request.getRemoteAddr())));
    }

    @Bean
    FilterRegistrationBean<Filter> bodyLimit(LimitSettings limits) {
        return at(
                BEFORE_SIGN_IN + 1, new BodyLimit(Math.toIntExact(limits.body().toBytes())));
    }

    @Bean
    FilterRegistrationBean<Filter> personLimit(LimitSettings limits) {
        return at(Ordered.LOWEST_PRECEDENCE, new RateLimit(limits.perPerson(), GateConfiguration::person));
    }

    private static Optional<String> person(HttpServletRequest request) {
        return Optional.ofNullable(request.getUserPrincipal()).map(Principal::getName);
    }

    private static FilterRegistrationBean<Filter> at(int order, Filter filter) {
        FilterRegistrationBean<Filter> registration = new FilterRegistrationBean<>(filter);
        registration.setOrder(order);
        registration.setName("gate" + Math.abs((long) order));
        return registration;
    }

    @Bean
    Jackson2ObjectMapperBuilderCustomizer boundedJson() {
        return json -> json.postConfigurer(mapper -> mapper.getFactory().setStreamReadConstraints(BOUNDS));
    }
}
