package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.assertj.core.data.Offset;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The theatre list of the demo day, as people use it. What is shown is compared with the record, not with the page's own classes. */
class DayPageTest {

    /** Family names of the demo's patients; none may stand in an address. */
    private static final Set<String> NAMES = Set.of("tillwick", "quennell", "marrowby", "dunnock");

    @RegisterExtension
    static final Browser browser = new Browser();

    private static List<WebElement> shown() {
        return browser.all("tr[data-words]").stream()
                .filter(WebElement::isDisplayed)
                .toList();
    }

    /** The prediction that booking-01's lens was chosen by. */
    private static Observation chosen() {
        return browser.server()
                .record()
                .read()
                .resource(Observation.class)
                .withId("plan-booking-01-predicted-srk-t")
                .execute();
    }

    private static WebElement row(String booking) {
        return browser.find("#eye-" + booking).findElement(By.xpath("ancestor::tr"));
    }

    @Test
    void every_eye_stands_in_its_theatre_with_what_the_record_says_of_it() {
        browser.signIn("Ms Vale");
        browser.shot("day-1280");
        assertThat(shown()).hasSize(12);
        assertThat(browser.find("h1").getText()).isEqualTo("Thursday 10 December 2026");
        assertThat(browser.find("section[aria-label='Theatre 1']").getText()).contains("6 eyes");
        Observation chosen = chosen();
        Procedure plan = browser.server()
                .record()
                .read()
                .resource(Procedure.class)
                .withId("plan-booking-06")
                .execute();
        String line = row("booking-01").getText();
        assertThat(line)
                .contains("08:30", "Tillwick, Oriel", "QX1077", "1953-04-17", "right eye", "ready", "age 73")
                .contains(String.format(
                                Locale.ROOT, "%+.2f", chosen.getValueQuantity().getValue())
                        .replace('-', '\u2212'));
        assertThat(plan.getExtensionString("https://lensward.org/fhir/StructureDefinition/plan-state"))
                .isEqualTo("withheld");
        assertThat(row("booking-06").getText())
                .contains("withheld", "no lens proposed")
                .doesNotContain("D target");
        browser.axe();
        browser.size(1024, 768);
        browser.shot("day-1024");
        assertThat(overflow()).isZero();
        browser.axe();
        assertThat(browser.complaints()).isEmpty();
    }

    private static long overflow() {
        return (Long) Objects.requireNonNull(browser.driver()
                .executeScript("return document.documentElement.scrollWidth - document.documentElement.clientWidth;"));
    }

    /** The interval is that of a normal distribution: the prediction and 1.96 standard deviations to either side. */
    @Test
    void the_prediction_is_drawn_to_scale_against_its_target() {
        browser.signIn("Ms Vale");
        Observation chosen = chosen();
        double predicted = chosen.getValueQuantity().getValue().doubleValue();
        double deviation = chosen.getComponent().stream()
                .filter(each -> each.getCode().getCodingFirstRep().getCode().equals("standard-deviation"))
                .map(each -> each.getValueQuantity().getValue().doubleValue())
                .findFirst()
                .orElseThrow();
        double target = -0.25;
        WebElement bar = row("booking-01").findElement(By.cssSelector("svg.bar"));
        double dot =
                Double.parseDouble(bar.findElement(By.cssSelector(".bar-dot")).getDomAttribute("cx"));
        String[] range = Objects.requireNonNull(
                        bar.findElement(By.cssSelector(".bar-range")).getDomAttribute("d"))
                .split("[^0-9.]+");
        double scale = 150 / 3.0;
        assertThat(dot).isCloseTo(75 + (predicted - target) * scale, Offset.offset(0.06));
        assertThat(Double.parseDouble(range[3]) - Double.parseDouble(range[1]))
                .isCloseTo(2 * 1.96 * deviation * scale, Offset.offset(0.11));
        assertThat(bar.getDomAttribute("aria-label")).contains("target \u22120.25 D");
    }

    @Test
    void a_name_is_found_in_the_page_and_stands_in_no_address_and_no_title() {
        browser.signIn("Nurse Lark");
        browser.find("#find").sendKeys("marrowby");
        assertThat(shown()).hasSize(1);
        assertThat(shown().get(0).getText()).contains("Marrowby, Isolde");
        browser.shot("day-found");
        browser.await(page -> "1 eye".equals(browser.find("#spoken").getDomProperty("textContent")));
        browser.find("#find").sendKeys(" left");
        assertThat(browser.find("#none-found").isDisplayed()).isTrue();
        browser.find("#find").clear();
        browser.find("#find").sendKeys(" ");
        assertThat(shown()).hasSize(12);
        String addresses = browser.all("[href],[action],[hx-get],[src]").stream()
                .flatMap(each -> List.of("href", "action", "hx-get", "src").stream()
                        .map(each::getDomAttribute)
                        .filter(address -> address != null))
                .collect(Collectors.joining(" "))
                .toLowerCase(Locale.ROOT);
        assertThat(NAMES).noneMatch(addresses::contains);
        assertThat(addresses).doesNotContain("qx1", "1953-04-17");
        assertThat(browser.driver().getTitle()).isEqualTo("Day - Lensward");
        assertThat(browser.driver().getCurrentUrl()).isEqualTo(browser.server().url() + "/");
    }

    @Test
    void only_the_eyes_that_are_asked_for() {
        browser.signIn("Ms Vale");
        browser.open("/day/2026-12-10?state=withheld&theatre=Theatre%202");
        assertThat(shown()).isNotEmpty().allMatch(row -> row.getText().contains("withheld"));
        assertThat(browser.all("section[aria-label='Theatre 1']")).isEmpty();
        browser.open("/day/2026-12-24");
        assertThat(browser.text()).contains("No eye on this day");
        browser.find("#day-before").click();
        browser.await(page -> shown().size() == 12);
        browser.open("/day/yesterday");
        assertThat(browser.find(".notice").getText()).isNotBlank();
        browser.axe();
    }

    @Test
    void a_keyboard_is_enough() {
        browser.open("/");
        for (int step = 0; step < 30 && !focused("name").equals("who"); step++) {
            browser.keys(Keys.TAB);
        }
        browser.keys(Keys.ARROW_DOWN, Keys.TAB);
        browser.keys(DemoServer.PASSWORD, Keys.ENTER);
        browser.awaitText("Nurse Lark");
        browser.keys(Keys.TAB);
        assertThat(browser.driver().switchTo().activeElement().getText()).isEqualTo("Skip to the content");
        browser.keys(Keys.ENTER);
        for (int step = 0; step < 30 && !focused("id").equals("eye-booking-01"); step++) {
            browser.keys(Keys.TAB);
        }
        assertThat(focused("id")).isEqualTo("eye-booking-01");
        browser.shot("day-focus");
    }

    private static String focused(String attribute) {
        String value = browser.driver().switchTo().activeElement().getDomAttribute(attribute);
        return value == null ? "" : value;
    }

    @Test
    void the_list_renews_itself_and_keeps_what_was_being_looked_for() {
        browser.signIn("Ms Vale");
        browser.find("#find").sendKeys("theatre-nowhere-");
        browser.find("#find").clear();
        browser.find("#find").sendKeys("quennell");
        Appointment before = browser.server()
                .record()
                .read()
                .resource(Appointment.class)
                .withId("appointment-02")
                .execute();
        before.setId("appointment-02");
        Appointment later = before.copy();
        later.setStartElement(new InstantType("2026-12-10T09:05:00Z"));
        try {
            browser.server().record().update().resource(later).execute();
            browser.await(page -> row("booking-02").getText().contains("09:05"));
            browser.await(page -> shown().size() == 1);
            assertThat(browser.find("#spoken").getDomProperty("textContent")).isEqualTo("The list has changed");
        } finally {
            browser.server().record().update().resource(before).execute();
        }
        assertThat(browser.complaints()).isEmpty();
    }
}
