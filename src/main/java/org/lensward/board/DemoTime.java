package org.lensward.board;

import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.lensward.board.api.TheatreClock;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;

/** In the demo it is always the made-up theatre day, or nobody could try a lens check. */
@Configuration(proxyBeanMethods = false)
public class DemoTime {

    /** The setting that names the day. */
    public static final String DAY = "lensward.demo.day";

    @Bean
    @Primary
    TheatreClock demoTheatreClock(Clock clock, @Value("${" + DAY + "}") LocalDate day) {
        long days = ChronoUnit.DAYS.between(LocalDate.now(clock), day);
        return new TheatreClock(Clock.offset(clock, Duration.ofDays(days)));
    }
}
