package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A surgeon's work on one eye. */
class EyePageTest {

    @RegisterExtension
    static final Browser browser = new Browser();

    @Test
    void look() {
        browser.signIn("Ms Vale");
        for (int i = 1; i <= 12; i++) {
            browser.open(String.format("/eye/booking-%02d", i));
            browser.shot("eye-" + i);
            System.err.println(i + " " + browser.complaints());
        }
    }
}
