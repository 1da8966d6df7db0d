package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A stock person's work, in a real browser on the demo's bank. */
class BankPageTest {

    @RegisterExtension
    static final Browser browser = new Browser();

    @Test
    void the_bank_shows_what_lies_where_and_what_is_short() {
        browser.signIn("Mr Keel");
        browser.open("/bank");
        browser.awaitText("Looked for at");
        assertThat(browser.text()).contains("Free cartons by model and power");
        browser.axe();
        browser.shot("bank");
        browser.size(1024, 768);
        browser.shot("bank-1024");
        assertThat(browser.complaints()).isEmpty();
        browser.size(1280, 800);
        browser.find("table.strip td a").click();
        browser.awaitText("cartons");
        browser.axe();
        browser.shot("bank-kind");
        browser.find("table.list tbody a").click();
        browser.awaitText("What happened to it");
        browser.axe();
        browser.shot("bank-carton");
        browser.open("/bank/in");
        browser.axe();
        browser.shot("bank-in");
        browser.open("/bank/recall?lot=L7");
        browser.axe();
        browser.shot("bank-recall");
        assertThat(browser.complaints()).isEmpty();
    }
}
