package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** A surgeon's work on one eye: read, trace a number, confirm, change, refuse, be overtaken. */
class EyePageTest {

    @RegisterExtension
    static final Browser browser = new Browser();

    private static WebElement number(String words) {
        return browser.driver().findElement(By.xpath("//a[contains(@class,'number') and .='" + words + "']"));
    }

    private static String main() {
        return browser.find("#main").getText();
    }

    @Test
    void the_plan_is_read_on_one_screen_and_every_number_is_traced_to_the_record_by_keys_alone() {
        browser.signIn("Ms Vale");
        browser.open("/eye/booking-04");
        assertThat(main()).contains("LEFT EYE", "Harbour 60", "chosen", "Measured", "Capsule rupture", "Bring");
        for (String part : List.of(".lens-power", ".formulas", ".powers", ".eye-side-word", ".side-view", "dl.short")) {
            assertThat(browser.find(part).getRect().getY() + 40)
                    .as(part + " begins on the first screen of 1280 x 800")
                    .isLessThan(800);
        }
        browser.shot("eye-ready");
        browser.axe();
        Observation length = browser.server()
                .record()
                .read()
                .resource(Observation.class)
                .withId("axial-length-left-04")
                .execute();
        WebElement shown = number(length.getValueQuantity().getValue().setScale(2) + " mm");
        browser.driver().executeScript("arguments[0].focus()", shown);
        browser.keys(Keys.ENTER);
        browser.awaitText("In the record");
        assertThat(browser.find("#evidence").getText())
                .contains(
                        "Observation/axial-length-left-04",
                        length.getMeta().getVersionId(),
                        length.getValueQuantity().getValue().toPlainString());
        browser.shot("eye-evidence");
        browser.axe();
        assertThat(browser.driver().getTitle()).doesNotContain("Dunnock");
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void a_withheld_plan_shows_the_reason_and_the_remedy_and_no_lens() {
        browser.signIn("Nurse Lark");
        browser.open("/eye/booking-06");
        assertThat(main()).contains("No lens is proposed", "To do:");
        assertThat(browser.all(".lens-power, .formulas, .implant, .optic, .implant-plane, .powers"))
                .isEmpty();
        assertThat(main()).doesNotContain("Harbour", "Confirm");
        browser.shot("eye-withheld");
        browser.axe();
    }

    @ParameterizedTest
    @ValueSource(strings = {"booking-04", "booking-06", "booking-10"})
    void the_sheet_is_exactly_one_page(String booking) {
        browser.signIn("Ms Vale");
        browser.open("/eye/" + booking);
        Map<String, Object> printed = browser.driver()
                .executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true, "printBackground", true));
        String pdf = new String(
                Base64.getDecoder().decode(String.valueOf(printed.get("data"))), StandardCharsets.ISO_8859_1);
        assertThat(Pattern.compile("/Type\\s*/Page[^s]").matcher(pdf).results().count())
                .isEqualTo(1);
    }

    @Test
    void a_surgeon_confirms_from_the_day_by_keys_alone_and_a_second_word_on_the_old_page_is_told_so() {
        browser.signIn("Ms Vale");
        browser.open("/eye/booking-02");
        String first = browser.driver().getWindowHandle();
        browser.driver().switchTo().newWindow(org.openqa.selenium.WindowType.TAB);
        browser.open("/eye/booking-02");
        String second = browser.driver().getWindowHandle();
        browser.driver().switchTo().window(first);
        browser.driver().executeScript("arguments[0].focus()", browser.find(".eye-acts form button"));
        browser.keys(Keys.ENTER);
        browser.awaitText("Confirmed. The lens may be picked.");
        assertThat(main()).contains("plan confirmed by Ms Vale");

        browser.driver().switchTo().window(second);
        browser.find("details.act:nth-of-type(2) summary").click();
        browser.find("details.act:nth-of-type(2) textarea").sendKeys("the second reading is doubtful");
        browser.find("details.act:nth-of-type(2) button").click();
        browser.awaitText("Somebody else acted on it meanwhile.");
        assertThat(main()).contains("Nothing was written", "confirmed by Ms Vale");
        assertThat(browser.find("details.act[open] textarea").getDomProperty("value"))
                .as("nothing typed is lost")
                .isEqualTo("the second reading is doubtful");
        browser.shot("eye-overtaken");
        browser.axe();
        browser.find("details.act[open] button").click();
        browser.awaitText("Not confirmed.");
        assertThat(main()).contains("refused");
        browser.shot("eye-refused");
        browser.driver().close();
        browser.driver().switchTo().window(first);
    }

    @Test
    void another_power_is_planned_as_the_target_it_meets_and_a_form_of_the_old_plan_is_kept() {
        browser.signIn("Ms Vale");
        browser.open("/eye/booking-04");
        String first = browser.driver().getWindowHandle();
        browser.driver().switchTo().newWindow(org.openqa.selenium.WindowType.TAB);
        browser.open("/eye/booking-04");
        String stale = browser.driver().getWindowHandle();
        browser.driver().switchTo().window(first);

        browser.find("details.act summary").click();
        Select power = new Select(browser.find("select[name=power]"));
        String wanted = power.getOptions().get(1).getDomAttribute("value");
        power.selectByIndex(1);
        browser.find("details.act[open] textarea").sendKeys("reads without spectacles");
        browser.shot("eye-change");
        browser.axe();
        browser.find("details.act[open] button").click();
        browser.awaitText("The booking says so now.");
        browser.await(page -> browser.find(".lens-power").getText().contains(wanted)
                && main().contains("awaiting confirmation")
                && !main().contains("it is being written"));
        Procedure plan = browser.server()
                .record()
                .read()
                .resource(Procedure.class)
                .withId("plan-booking-04")
                .execute();
        Quantity target =
                (Quantity) plan.getExtensionByUrl("https://lensward.org/fhir/StructureDefinition/target-refraction")
                        .getValue();
        assertThat(main()).contains("target " + String.format("%+.2f D", target.getValue()));

        browser.driver().switchTo().window(stale);
        browser.find("details.act summary").click();
        browser.find("input[name=target]").sendKeys("-1.00");
        browser.find("details.act[open] textarea").sendKeys("as agreed in clinic");
        browser.find("details.act[open] button").click();
        browser.awaitText("The plan has changed since you opened this page.");
        assertThat(browser.find(".lens-power").getText())
                .as("the new plan beside it")
                .contains(wanted);
        assertThat(browser.find("input[name=target]").getDomProperty("value")).isEqualTo("-1.00");
        assertThat(browser.find("details.act[open] textarea").getDomProperty("value"))
                .isEqualTo("as agreed in clinic");
        browser.shot("eye-stale");
        browser.driver().close();
        browser.driver().switchTo().window(first);
    }
}
