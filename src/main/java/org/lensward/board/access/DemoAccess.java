package org.lensward.board.access;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Lets the demo's invented people in. Only the demo names this class; no setting of a running adapter does. */
@Configuration(proxyBeanMethods = false)
public class DemoAccess {

    /** The setting that holds the password the demo made. */
    public static final String PASSWORD = "lensward.demo.password";

    @Bean
    DemoUsers demoUsers(@Value("${" + PASSWORD + "}") String password) {
        return new DemoUsers(password);
    }
}
