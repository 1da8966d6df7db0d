package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.lensward.record.Fhir;
import org.lensward.record.outcome.InventedYear;

/** The outcomes page as a surgeon sees it: read behind its back, drawn, told, printable. */
class OutcomesPageTest {

    private static final FhirContext FHIR = Fhir.r4();

    @RegisterExtension
    static final Browser browser = new Browser();

    @Test
    void outcomes_are_read_drawn_and_told() throws InterruptedException {
        browser.server()
                .record()
                .transaction()
                .withBundle(InventedYear.fewAsTransaction(FHIR))
                .execute();
        browser.open("/");
        browser.signIn("Ms Vale");
        browser.open("/outcomes");
        for (int wait = 0; wait < 60 && !browser.find("main").getText().contains("counted"); wait++) {
            Thread.sleep(500);
            browser.open("/outcomes");
        }
        assertThat(browser.find("main").getText())
                .contains(" operations from 2026-01-05", "Prediction error", "What is left out")
                .doesNotContain("person-");
        assertThat(browser.find(".chart svg").getAttribute("role")).isEqualTo("img");
        browser.axe();
        browser.shot("outcomes");
        browser.size(1024, 768);
        browser.axe();
        assertThat(browser.complaints()).isEmpty();
    }
}
