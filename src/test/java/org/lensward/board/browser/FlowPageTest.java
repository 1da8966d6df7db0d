package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Keys;

/** An integrator's work, in a real browser: a booking that cannot be planned, its replay, the dry run. */
class FlowPageTest {

    private static final String NOBODYS = "booking-of-nobody";

    @RegisterExtension
    static final Browser browser = new Browser();

    /** A booking whose patient the record does not name: it cannot be planned. */
    @BeforeAll
    static void parkOne() {
        ServiceRequest booking = browser.server()
                .record()
                .read()
                .resource(ServiceRequest.class)
                .withId("booking-01")
                .execute()
                .copy();
        booking.setId(NOBODYS);
        booking.getIdentifier().clear();
        booking.setSubject(new Reference().setDisplay("nobody"));
        browser.server().record().update().resource(booking).execute();
    }

    @AfterAll
    static void takeBack() {
        browser.server()
                .record()
                .delete()
                .resourceById("ServiceRequest", NOBODYS)
                .execute();
    }

    @Test
    void a_parked_booking_is_seen_with_its_reason_and_taken_up_again_by_keyboard() {
        browser.signIn("Ms Fenn");
        browser.open("/flow");
        browser.awaitText("ServiceRequest/" + NOBODYS);
        assertThat(browser.find("table.list tbody").getText()).contains("cannot-be-read");
        browser.axe();
        browser.shot("flow-parked");
        browser.size(1024, 768);
        browser.shot("flow-parked-1024");

        browser.find("#replay-0").sendKeys(Keys.ENTER);
        browser.awaitText("is on its way again.");
        browser.awaitText("ServiceRequest/" + NOBODYS);
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void while_the_dry_run_is_on_the_page_says_so_and_off_it_writes_again() {
        browser.signIn("Ms Fenn");
        browser.open("/flow");
        browser.find("#dry-run").click();
        browser.awaitText("Dry run: nothing is written to the record.");
        browser.axe();
        browser.shot("flow-dry-run");
        browser.find("#dry-run").click();
        browser.awaitText("Dry run: off");
        assertThat(browser.text()).contains("The record is written again");
    }

    @Test
    void who_is_no_integrator_is_refused() {
        browser.signIn("Nurse Lark");
        browser.open("/flow");
        browser.awaitText("Not for your role");
    }
}
