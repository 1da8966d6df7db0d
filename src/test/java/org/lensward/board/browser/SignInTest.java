package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Coming in, and being told why not. */
class SignInTest {

    @RegisterExtension
    static final Browser browser = new Browser();

    @Test
    void a_surgeon_signs_in_and_sees_name_and_role() {
        browser.open("/");
        assertThat(browser.driver().getCurrentUrl()).endsWith("/sign-in");
        browser.shot("sign-in");
        browser.axe();
        browser.signIn("Ms Vale");
        assertThat(browser.find("header").getText()).contains("Ms Vale", "surgeon").doesNotContain("Flow");
        browser.axe();
        browser.shot("day");
        browser.size(1024, 768);
        browser.shot("day-small");
        assertThat(browser.complaints()).isEmpty();
    }
}
