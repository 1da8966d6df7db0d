package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.hl7.fhir.r4.model.Device;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** A nurse's work in theatre, with a scanner and the keyboard alone. */
class CheckPageTest {

    @RegisterExtension
    static final Browser browser = new Browser();

    private static final List<String> CHECKPOINTS =
            List.of("pick", "sign-in", "time-out", "before-opening", "sign-out");

    private static Theatre at(String booking) {
        return new Theatre(browser.server().record(), booking);
    }

    private static void confirmed(String booking) {
        browser.signIn("Ms Vale");
        browser.open("/eye/" + booking);
        browser.find(".eye-acts form button").click();
        browser.awaitText("Confirmed. The lens may be picked.");
        browser.driver().manage().deleteAllCookies();
        browser.signIn("Nurse Lark");
        browser.open("/check/" + booking);
    }

    private static WebElement question() {
        return browser.await(
                page -> browser.all(".ask:not([hidden])").stream().findFirst().orElse(null));
    }

    /** A wedge sends FNC1 as the keys of ASCII 29. */
    private static void scan(String text) {
        String[] parts = text.split("\u001d");
        for (int part = 0; part < parts.length; part++) {
            browser.keys(part == 0 ? "" : Keys.chord(Keys.CONTROL, "]"), parts[part]);
        }
        browser.keys(Keys.ENTER);
    }

    private static void press(int place) {
        for (int tab = 0; tab <= place; tab++) {
            browser.keys(Keys.TAB);
        }
        browser.keys(Keys.ENTER);
    }

    private static void press(WebElement question, String value) {
        List<WebElement> options = question.findElements(By.cssSelector("[data-value]"));
        List<String> values =
                options.stream().map(each -> each.getDomAttribute("data-value")).toList();
        press(values.indexOf(value));
    }

    /** Every toggle, then on. */
    private static void each(WebElement question) {
        if (question.findElements(By.cssSelector("input")).isEmpty()) {
            browser.keys(Keys.TAB);
        } else {
            browser.keys(Keys.chord(Keys.SHIFT, Keys.TAB));
        }
        int toggles = question.findElements(By.cssSelector(".toggle")).size();
        browser.driver().executeScript("arguments[0].querySelector('button').focus()", question);
        for (int toggle = 0; toggle < toggles; toggle++) {
            browser.keys(Keys.SPACE);
            browser.keys(Keys.TAB);
        }
        browser.driver().executeScript("arguments[0].querySelector('[data-go]').focus()", question);
        browser.keys(Keys.ENTER);
    }

    private static void answer(WebElement question, Theatre theatre, Device carton, String state) {
        String id = question.getDomAttribute("data-id");
        Map<String, String> typed = Map.of(
                "axis", theatre.axis(),
                "cylinder", theatre.cylinder(),
                "number-0", theatre.numbers().get(0),
                "number-1", theatre.numbers().get(1),
                "born", theatre.born(),
                "plan", theatre.plan(),
                "power", "+" + theatre.power(),
                "second", "Nurse Wold");
        switch (Objects.requireNonNull(id)) {
            case "scan" -> scan(Theatre.scan(carton));
            case "package" -> press(question, state);
            case "model" -> press(question, theatre.model());
            case "allergies", "back-ups" -> each(question);
            case "review" -> press(0);
            case "surgeon" -> browser.keys(Keys.ENTER);
            default -> {
                if (id.startsWith("eye-")) {
                    press(question, theatre.eye());
                } else {
                    browser.keys(Objects.requireNonNull(typed.get(id)), Keys.ENTER);
                }
            }
        }
        browser.await(page -> !question.isDisplayed());
    }

    private static void pass(Theatre theatre, Device carton, String state) {
        while (browser.all(".verdict[data-kind]").isEmpty()) {
            WebElement question = question();
            boolean last = "review".equals(question.getDomAttribute("data-id"));
            answer(question, theatre, carton, state);
            if (last) {
                browser.await(page -> !browser.all(".verdict[data-kind]").isEmpty());
            }
        }
    }

    @Test
    void a_lens_goes_the_whole_way_from_the_shelf_into_the_eye() {
        Theatre theatre = at("booking-11");
        confirmed("booking-11");
        Device carton = theatre.carton();
        browser.size(1024, 768);
        for (String checkpoint : CHECKPOINTS) {
            question();
            browser.shot("check-" + checkpoint);
            browser.axe();
            pass(theatre, carton, checkpoint.equals("sign-out") ? "opened" : "intact");
            assertThat(browser.find(".verdict-word").getText()).as(checkpoint).isEqualTo("PASSED");
            assertThat(browser.find("#spoken").getText()).isNotEqualTo("STOP");
            browser.shot("check-" + checkpoint + "-passed");
            browser.axe();
            assertThat(browser.driver().executeScript("return sessionStorage.length"))
                    .as("answers are cleared")
                    .isEqualTo(0L);
            if (!checkpoint.equals("sign-out")) {
                browser.keys(Keys.TAB, Keys.ENTER);
                browser.await(page -> browser.all(".verdict[data-kind]").isEmpty());
            }
        }
        assertThat(browser.find(".implant-card").getText())
                .contains("(01)" + carton.getUdiCarrierFirstRep().getDeviceIdentifier(), carton.getSerialNumber());
        browser.open("/check/booking-11");
        assertThat(browser.text()).contains("COMPLETE");
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void a_wrong_carton_stops_it_for_everyone_to_see_and_only_the_surgeon_opens_another_check() {
        Theatre theatre = at("booking-05");
        confirmed("booking-05");
        Device wrong = theatre.anotherPower();
        browser.size(1024, 768);
        for (WebElement key : browser.all(".ask button, .check-foot button")) {
            if (key.isDisplayed()) {
                assertThat(key.getRect().getHeight()).isGreaterThanOrEqualTo(64);
                assertThat(key.getRect().getWidth()).isGreaterThanOrEqualTo(64);
            }
        }
        pass(theatre, wrong, "intact");
        assertThat(browser.find(".verdict-word").getText()).isEqualTo("STOP");
        double bought = wrong.getPropertyFirstRep()
                .getValueQuantityFirstRep()
                .getValue()
                .doubleValue();
        assertThat(browser.find(".differences").getText())
                .contains(
                        "power by the bank",
                        String.format("%+.2f D", Double.parseDouble(theatre.power())),
                        String.format("%+.2f D", bought));
        assertThat(browser.driver().switchTo().activeElement().getText()).contains("STOP");
        browser.shot("check-stop");
        browser.axe();
        browser.open("/check/booking-05");
        assertThat(browser.text()).contains("STOP", "power by the bank");
        assertThat(browser.all(".ask")).isEmpty();
        browser.shot("check-stopped-before");
    }

    @Test
    void answers_outlive_a_lost_connection_and_a_session_that_ended() {
        Theatre theatre = at("booking-03");
        confirmed("booking-03");
        Device carton = theatre.carton();
        answer(question(), theatre, carton, "intact");
        answer(question(), theatre, carton, "intact");
        browser.driver().navigate().refresh();
        assertThat(question().getDomAttribute("data-id"))
                .as("one goes on where one was")
                .isEqualTo("born");
        while (!"review".equals(question().getDomAttribute("data-id"))) {
            answer(question(), theatre, carton, "intact");
        }
        offline(true);
        press(0);
        browser.awaitText("Not sent yet. Your answers are kept here");
        browser.shot("check-no-connection");
        offline(false);
        browser.await(page -> !browser.all(".verdict[data-kind]").isEmpty());
        assertThat(browser.find(".verdict-word").getText()).isEqualTo("PASSED");

        browser.keys(Keys.TAB, Keys.ENTER);
        browser.await(page -> browser.all(".verdict[data-kind]").isEmpty());
        while (!"review".equals(question().getDomAttribute("data-id"))) {
            answer(question(), theatre, carton, "intact");
        }
        browser.driver().manage().deleteAllCookies();
        press(0);
        browser.awaitText("Your session has ended");
        browser.shot("check-session-ended");
        String check = browser.driver().getWindowHandle();
        browser.driver().switchTo().newWindow(org.openqa.selenium.WindowType.TAB);
        browser.open("/signed-in");
        browser.fillSignIn("Nurse Lark");
        browser.await(page -> String.valueOf(page.getCurrentUrl()).contains("/signed-in"));
        browser.driver().close();
        browser.driver().switchTo().window(check);
        browser.driver().executeScript("window.dispatchEvent(new Event('focus'))");
        browser.await(page -> !browser.all(".verdict[data-kind]").isEmpty());
        assertThat(browser.find(".verdict-word").getText()).isEqualTo("PASSED");
    }

    private static void offline(boolean yes) {
        browser.driver().executeCdpCommand("Network.enable", Map.of());
        browser.driver()
                .executeCdpCommand(
                        "Network.emulateNetworkConditions",
                        Map.of("offline", yes, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
    }
}
