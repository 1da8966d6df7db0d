package org.lensward.board.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.logging.Level;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.TimeoutException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.ExpectedCondition;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * A real Chromium for page tests: {@code @RegisterExtension static final Browser browser = new Browser();}. Every class has a browser of
 * its own and every test starts signed out; all share one {@link DemoServer}, so a test changes only bookings and cartons that no other
 * class uses. Without Chromium on the machine the tests are skipped, and fail where CI=true.
 */
public final class Browser implements BeforeAllCallback, BeforeEachCallback, AfterAllCallback {

    private static final File CHROMIUM = new File("/usr/bin/chromium");
    private static final File DRIVER = new File("/usr/bin/chromedriver");
    private static final Path SCREENS = Path.of("target", "screens");

    @SuppressWarnings("NullAway.Init")
    private ChromeDriver driver;

    @SuppressWarnings("NullAway.Init")
    private DemoServer server;

    @Override
    public void beforeAll(ExtensionContext context) throws IOException {
        boolean there = CHROMIUM.canExecute() && DRIVER.canExecute();
        if (!there && "true".equals(System.getenv("CI"))) {
            throw new AssertionError("CI needs " + CHROMIUM + " and " + DRIVER);
        }
        Assumptions.assumeTrue(there, "no Chromium on this machine: page tests are skipped");
        server = DemoServer.shared(context);
        driver = new ChromeDriver(
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(DRIVER)
                        .usingAnyFreePort()
                        .build(),
                options());
        driver.manage().timeouts().implicitlyWait(Duration.ZERO);
    }

    private static ChromeOptions options() throws IOException {
        LoggingPreferences console = new LoggingPreferences();
        console.enable(LogType.BROWSER, Level.ALL);
        ChromeOptions options = new ChromeOptions().setBinary(CHROMIUM);
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-dev-shm-usage",
                "--force-device-scale-factor=1",
                "--user-data-dir=" + Files.createTempDirectory("browser"));
        options.setCapability("goog:loggingPrefs", console);
        return options;
    }

    @Override
    public void beforeEach(ExtensionContext context) {
        driver.get(server.url() + "/sign-in");
        driver.manage().deleteAllCookies();
        size(1280, 800);
        driver.manage().logs().get(LogType.BROWSER);
    }

    @Override
    public void afterAll(ExtensionContext context) {
        if (driver != null) {
            driver.quit();
        }
    }

    public ChromeDriver driver() {
        return driver;
    }

    public DemoServer server() {
        return server;
    }

    /** Opens a page of the board. */
    public void open(String path) {
        driver.get(server.url() + path);
    }

    /** Signs one of the demo's people in and lands on the Day page. */
    public void signIn(String who) {
        open("/sign-in");
        fillSignIn(who);
        await(page -> (server.url() + "/").equals(page.getCurrentUrl()));
    }

    /** Fills the sign-in form that is shown, and sends it. */
    public void fillSignIn(String who) {
        find("input[name=who][value='" + who + "']").click();
        find("input[name=password]").sendKeys(DemoServer.PASSWORD, Keys.ENTER);
    }

    /** The viewport's size. */
    public void size(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    public WebElement find(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    public List<WebElement> all(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    /** All that can be read on the page. */
    public String text() {
        return find("body").getText();
    }

    /** Waits until it is so; a part of the page that is renewed meanwhile is looked for again. */
    public <T> T await(ExpectedCondition<T> condition) {
        return new WebDriverWait(driver, Duration.ofSeconds(20), Duration.ofMillis(100))
                .ignoring(StaleElementReferenceException.class)
                .until(condition);
    }

    /** Waits until the page says it. */
    public void awaitText(String words) {
        try {
            await(page -> text().contains(words));
        } catch (TimeoutException never) {
            shot("did-not-come");
            throw new AssertionError("\"" + words + "\" does not come; the page says: " + text(), never);
        }
    }

    /** Keys to whatever has the focus. */
    public void keys(CharSequence... keys) {
        driver.switchTo().activeElement().sendKeys(keys);
    }

    /** Keeps what is to be seen, as {@code target/screens/NAME.png}. */
    public void shot(String name) {
        try {
            Files.createDirectories(SCREENS);
            Files.write(SCREENS.resolve(name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** No serious or critical fault by the rules of axe-core (WCAG 2.2 A and AA and its best practices). */
    public void axe() {
        Set<String> grave = Set.of("serious", "critical");
        assertThat(new AxeBuilder()
                        .analyze(driver).getViolations().stream()
                                .filter(each -> grave.contains(each.getImpact()))
                                .map(each -> each.getId() + ": " + each.getHelp() + " "
                                        + each.getNodes().stream()
                                                .map(node -> node.getHtml())
                                                .toList()))
                .as("accessibility of " + driver.getCurrentUrl())
                .isEmpty();
    }

    /** What the browser's console complains of since the last look, answers that are refusals left out. */
    public List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(each -> each.getLevel().intValue() >= Level.WARNING.intValue())
                .map(LogEntry::getMessage)
                .filter(each -> !each.contains("the server responded with a status of 4"))
                .toList();
    }
}
