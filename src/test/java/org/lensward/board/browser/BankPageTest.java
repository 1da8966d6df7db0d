package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.support.ui.Select;

/** A stock person's work, in a real browser on the demo's bank. */
class BankPageTest {

    @RegisterExtension
    static final Browser browser = new Browser();

    /** A power of which the demo's bank has no carton and no kit a need. */
    private static final String CELL = "kind-harbour-60-14_00-";

    /** Another, which one test alone takes in. */
    private static final String FIRST = "kind-harbour-60-14_50-";

    private static String label(String lot, String serial) {
        return "]d2010952123400001317" + "280131" + "10" + lot + "\u241d" + "21" + serial;
    }

    private static void bank() {
        browser.open("/bank");
        browser.awaitText("Looked for at");
    }

    /** By keyboard alone, as a scanner types: the label, Enter, the power, the rest of the form by tab and letter. */
    private static void takeIn(String lot, String serial) {
        takeIn(lot, serial, "14");
    }

    private static void takeIn(String lot, String serial, String power) {
        browser.open("/bank/in");
        browser.keys(label(lot, serial), Keys.ENTER);
        browser.awaitText("The label says");
        browser.await(page -> "power".equals(page.switchTo().activeElement().getAttribute("name")));
        browser.keys(power, Keys.TAB, Keys.TAB);
        browser.keys("Lens store b", Keys.TAB);
        browser.keys("Harb", Keys.TAB, Keys.TAB);
        browser.keys(Keys.ENTER);
        browser.awaitText("Taken in.");
    }

    private static Device unit() {
        String id = browser.driver().getCurrentUrl().replaceFirst(".*/", "");
        return browser.server()
                .record()
                .read()
                .resource(Device.class)
                .withId(id)
                .execute();
    }

    @Test
    void a_carton_is_scanned_in_by_keyboard_and_the_strip_shows_it() {
        browser.signIn("Mr Keel");
        bank();
        assertThat(browser.all("#" + FIRST)).isEmpty();
        browser.axe();
        browser.shot("bank");
        browser.size(1024, 768);
        browser.shot("bank-1024");
        browser.size(1280, 800);

        takeIn("PAGE1", "77001", "14.5");
        browser.shot("bank-taken-in");
        bank();

        assertThat(browser.find("#" + FIRST).getText()).contains("1 free");
        browser.find("#" + FIRST).sendKeys(Keys.ENTER);
        browser.awaitText("1 carton");
        browser.axe();
        browser.shot("bank-kind");
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void a_carton_is_carried_to_another_store_and_its_history_says_so() {
        browser.signIn("Mr Keel");
        takeIn("PAGE2", "77002");
        new Select(browser.find("form[hx-post$=carry] select")).selectByVisibleText("Lens store of the north site");
        browser.find("form[hx-post$=carry] button").click();
        browser.awaitText("Carried to another store. The record has it");

        assertThat(unit().getLocation().getReference()).isEqualTo("Location/north-store");
        assertThat(browser.text()).contains("to Lens store of the north site", "Mr Keel");
        browser.axe();
        browser.shot("bank-carton");
        browser.open("/bank?site=Location/north-store");
        assertThat(browser.find("#" + CELL).getText()).contains("1 free");
    }

    @Test
    void of_two_people_on_one_carton_the_second_is_told_and_keeps_what_was_typed() {
        browser.signIn("Mr Keel");
        takeIn("PAGE3", "77003");
        Device before = unit();
        before.setLocation(new Reference("Location/north-store"));
        browser.server().record().update().resource(before).execute();

        browser.find("form[hx-post$=waste] input[name=reason]").sendKeys("dropped in the store");
        browser.find("form[hx-post$=waste] button").click();
        browser.awaitText("nothing was written");

        assertThat(browser.text()).contains("Someone else moved", "Lens store of the north site");
        assertThat(browser.find("form[hx-post$=waste] input[name=reason]").getAttribute("value"))
                .isEqualTo("dropped in the store");
        assertThat(unit().getStatus()).isEqualTo(Device.FHIRDeviceStatus.ACTIVE);
        browser.axe();
        browser.shot("bank-lost-race");
        browser.find("form[hx-post$=waste] button").click();
        browser.awaitText("Written off. The record has it");
    }

    @Test
    void a_recalled_lot_is_found_where_it_lies_and_put_in_quarantine() {
        browser.signIn("Mr Keel");
        takeIn("PAGE4", "77004");
        browser.find("#recall").click();
        browser.awaitText("Lot PAGE4: 1 carton");
        browser.find("form[hx-post$=quarantine] input[name=reason]").sendKeys("recalled by its maker");
        browser.find("#quarantine").click();
        browser.awaitText("In quarantine.");

        assertThat(browser.text()).contains("77004", "in quarantine");
        browser.axe();
        browser.shot("bank-recall");
        assertThat(browser.server()
                        .record()
                        .search()
                        .byUrl("Device?status=inactive&identifier:missing=true")
                        .returnBundle(Bundle.class)
                        .execute()
                        .getEntry())
                .extracting(each -> ((Device) each.getResource()).getLotNumber())
                .contains("PAGE4");
    }

    @Test
    void a_nurse_sees_the_bank_and_moves_nothing() {
        browser.signIn("Nurse Lark");
        bank();
        assertThat(browser.all("#order")).isEmpty();
        browser.find("a[id^=soon-unit]").click();
        browser.awaitText("What happened to it");
        assertThat(browser.all("form.deed")).isEmpty();
        Map<?, ?> print = (Map<?, ?>) browser.driver().executeCdpCommand("Page.printToPDF", Map.of());
        assertThat(print.get("data")).isNotNull();
    }
}
