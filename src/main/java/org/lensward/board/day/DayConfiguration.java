package org.lensward.board.day;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import org.lensward.flow.RecordClient;
import org.lensward.plan.Policy;
import org.lensward.record.bank.LensBank;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** The Day page, and what keeps it fresh. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(DaySettings.class)
@Import(DayPage.class)
public class DayConfiguration {

    @Bean
    DayView dayView(RecordClient client, LensBank bank, Policy policy, DaySettings settings, Clock clock) {
        return new DayView(new RecordReading(client, bank, policy, clock), settings, clock);
    }

    /** Whatever is written through us, the lists are read again. */
    @Bean
    WebMvcConfigurer freshDay(DayView view) {
        return new WebMvcConfigurer() {
            @Override
            public void addInterceptors(InterceptorRegistry registry) {
                registry.addInterceptor(new Written(view));
            }
        };
    }

    private record Written(DayView view) implements HandlerInterceptor {

        @Override
        public void afterCompletion(
                HttpServletRequest request, HttpServletResponse response, Object handler, @Nullable Exception failure) {
            if (!"GET".equals(request.getMethod()) && response.getStatus() < 400) {
                view.written();
            }
        }
    }
}
