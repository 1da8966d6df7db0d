package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.Keys;

/** Coming in, being told why not, and a session that ends in the middle of something. */
class SignInTest {

    @RegisterExtension
    static final Browser browser = new Browser();

    private static final String COOKIE = "lensward";

    @Test
    void a_surgeon_signs_in_and_lands_where_they_wanted_to_be() {
        browser.open("/day/2026-12-10?state=ready");
        assertThat(browser.driver().getCurrentUrl()).endsWith("/sign-in");
        browser.shot("sign-in");
        browser.axe();
        browser.fillSignIn("Ms Vale");
        browser.await(page -> String.valueOf(page.getCurrentUrl()).endsWith("/day/2026-12-10?state=ready"));
        assertThat(browser.find("header").getText())
                .contains("Ms Vale", "surgeon")
                .doesNotContain("Flow");
        Cookie session = Objects.requireNonNull(browser.driver().manage().getCookieNamed(COOKIE));
        assertThat(session.isHttpOnly()).isTrue();
        assertThat(session.getSameSite()).isEqualTo("Lax");
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void a_wrong_password_says_nothing_about_why() {
        browser.open("/sign-in");
        browser.find("input[name=password]").sendKeys("wrong", Keys.ENTER);
        browser.awaitText("Nobody could be signed in");
        browser.shot("sign-in-refused");
        browser.axe();
    }

    @Test
    void what_is_for_another_role_is_a_page_that_says_so() {
        browser.signIn("Nurse Lark");
        browser.open("/flow");
        assertThat(browser.text()).contains("Not for your role", "Nurse Lark", "Nothing was written");
        browser.shot("another-role");
        browser.axe();
    }

    @Test
    void an_address_that_is_not_there_is_a_page_too() {
        browser.signIn("Ms Fenn");
        assertThat(browser.find("nav").getText()).contains("Flow");
        browser.open("/nowhere");
        assertThat(browser.all(".notice")).hasSize(1);
        browser.shot("not-there");
    }

    @Test
    void signing_out_ends_the_session() {
        browser.signIn("Mr Keel");
        browser.find(".who button").click();
        browser.awaitText("You have signed out");
        browser.open("/");
        assertThat(browser.driver().getCurrentUrl()).endsWith("/sign-in");
    }

    /** The page stays, with what was typed; another tab signs in; then the page goes on by itself. */
    @Test
    void a_session_that_ended_loses_nothing_that_was_typed() {
        browser.signIn("Ms Vale");
        browser.find("#find").sendKeys("harbour");
        String page = browser.driver().getWindowHandle();
        browser.driver().manage().deleteCookieNamed(COOKIE);
        browser.await(any -> browser.find("#ended").isDisplayed());
        browser.shot("session-ended");
        browser.axe();
        browser.find("#ended a").click();
        browser.await(any -> any.getWindowHandles().size() == 2);
        browser.driver().getWindowHandles().stream()
                .filter(each -> !each.equals(page))
                .forEach(browser.driver().switchTo()::window);
        browser.await(any -> !browser.all("input[name=password]").isEmpty());
        browser.fillSignIn("Ms Vale");
        browser.awaitText("You are signed in");
        browser.driver().close();
        browser.driver().switchTo().window(page);
        browser.driver().executeScript("window.dispatchEvent(new Event('focus'))");
        browser.await(any -> !browser.find("#ended").isDisplayed());
        assertThat(browser.find("#find").getDomProperty("value")).isEqualTo("harbour");
    }
}
