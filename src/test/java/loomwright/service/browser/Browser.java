package loomwright.service.browser;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.logging.Level;
import loomwright.service.Server;
import loomwright.service.limits.Options;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.print.PageMargin;
import org.openqa.selenium.print.PageSize;
import org.openqa.selenium.print.PrintOptions;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A browser at a service of its own. */
final class Browser implements AutoCloseable {
    static final Dimension WIDE = new Dimension(1300, 900);
    static final Dimension PHONE = new Dimension(390, 800);

    private static final File CHROMIUM = new File("/usr/bin/chromium");
    private static final File DRIVER = new File("/usr/bin/chromedriver");
    private static final Duration PATIENCE = Duration.ofMinutes(2);
    private static final Duration POLL = Duration.ofMillis(50);

    private final Server server;
    private final ChromeDriver driver;

    private Browser(Server server, ChromeDriver driver) {
        this.server = server;
        this.driver = driver;
    }

    static Browser start() {
        return start(Map.of());
    }

    static Browser withoutScripts() {
        return start(Map.of("profile.managed_default_content_settings.javascript", 2));
    }

    private static Browser start(Map<String, Object> preferences) {
        assumeTrue(
                CHROMIUM.canExecute() && DRIVER.canExecute(),
                "the Debian packages chromium and chromium-driver are not installed");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(CHROMIUM);
        options.setExperimentalOption("prefs", preferences);
        options.addArguments(
                "--headless",
                // Chromium does not start for root with its sandbox; the pages are our own.
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-dev-shm-usage");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service =
                new ChromeDriverService.Builder().usingDriverExecutable(DRIVER).build();
        Server server = Server.start(Options.DEFAULT.withPort(0));
        ChromeDriver driver = new ChromeDriver(service, options);
        driver.manage().timeouts().scriptTimeout(PATIENCE);
        return new Browser(server, driver);
    }

    /** Opens the help page as somebody who was never there. */
    Browser open(Dimension size) {
        driver.manage().window().setSize(size);
        driver.get(address("/health"));
        script("localStorage.clear()");
        return go("/");
    }

    /** Opens an address and waits until the page has begun. */
    Browser go(String path) {
        driver.get("about:blank");
        driver.get(address(path));
        waitUntil(here -> !here.find("html.js").isEmpty());
        return this;
    }

    /** Opens one of the examples and waits until it is drawn. */
    Browser openExample(String title) {
        waitUntil(here -> !here.find("#examples button").isEmpty());
        find("#examples button").stream()
                .filter(button -> button.getText().toLowerCase(Locale.ROOT).contains(title))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no example " + title))
                .click();
        waitUntil(Browser::isDrawn);
        return this;
    }

    void resize(Dimension size) {
        driver.manage().window().setSize(size);
    }

    void tab(String name) {
        one("#tab-" + name).click();
        waitUntil(here -> here.one("#panel-" + name).isDisplayed());
    }

    /** What stands in the fields of each row of a grid; what is only assumed stands in brackets. */
    List<String> rows(String table) {
        Object rows = script(
                "return [...document.querySelectorAll(arguments[0] + ' tbody tr')].map(row =>"
                        + " [...row.querySelectorAll('input')].map(i => i.value || (i.placeholder ? `(${i.placeholder})` : ''))"
                        + ".join('|'))",
                table);
        return rows instanceof List<?> list ? list.stream().map(String::valueOf).toList() : List.of();
    }

    void dark(boolean dark) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    /** The page as it would be printed, a PDF. */
    byte[] printed() {
        return Base64.getDecoder().decode(driver.print(new PrintOptions()).getContent());
    }

    /** The same on paper of a size. */
    byte[] printed(double widthCm, double heightCm) {
        PrintOptions options = new PrintOptions();
        options.setPageSize(new PageSize(heightCm, widthCm));
        options.setPageMargin(new PageMargin(0, 0, 0, 0));
        return Base64.getDecoder().decode(driver.print(options).getContent());
    }

    /** Shows the page by its rules for paper, or again by those for a screen. */
    void forPrint(boolean paper) {
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", paper ? "print" : ""));
    }

    /** Shows a file of HTML as if it had been opened. */
    void showHtml(String html) {
        driver.get("data:text/html;charset=utf-8;base64,"
                + Base64.getEncoder().encodeToString(html.getBytes(StandardCharsets.UTF_8)));
    }

    /** What a script that waits comes to; it hands its answer to {@code done}. */
    Object later(String script, Object... arguments) {
        Object answer = driver.executeAsyncScript(
                "const done = arguments[arguments.length - 1]; const failed = e => done('failed: ' + e);" + script,
                arguments);
        return answer == null ? "" : answer;
    }

    void type(CharSequence... keys) {
        new Actions(driver).sendKeys(keys).perform();
    }

    Browser openWithoutWaiting() {
        return visit("/");
    }

    /** Opens an address, without waiting for a script. */
    Browser visit(String path) {
        driver.get(address(path));
        return this;
    }

    String address(String path) {
        return "http://127.0.0.1:" + server.port() + path;
    }

    boolean isDrawn() {
        return !find("#diagram svg").isEmpty() && "false".equals(one("#diagram").getAttribute("aria-busy"));
    }

    WebElement one(String selector) {
        return driver.findElement(By.cssSelector(selector));
    }

    List<WebElement> find(String selector) {
        return driver.findElements(By.cssSelector(selector));
    }

    String text(String selector) {
        return one(selector).getText();
    }

    void choose(String selector, String visibleText) {
        new Select(one(selector)).selectByVisibleText(visibleText);
    }

    void enter(String selector, String text) {
        WebElement field = one(selector);
        field.clear();
        field.sendKeys(text);
    }

    void waitUntil(Function<Browser, Boolean> state) {
        new WebDriverWait(driver, PATIENCE, POLL)
                .ignoring(StaleElementReferenceException.class)
                .until(ignored -> state.apply(this));
    }

    void waitForText(String selector, String part) {
        waitUntil(here -> here.find(selector).stream().anyMatch(e -> e.getText().contains(part)));
    }

    Object script(String script, Object... arguments) {
        Object answer = driver.executeScript(script, arguments);
        return answer == null ? "" : answer;
    }

    /** The element that has the keyboard. */
    WebElement focused() {
        return driver.switchTo().activeElement();
    }

    String title() {
        return String.valueOf(driver.getTitle());
    }

    /** Everything that the browser complained of since the last time this was asked. */
    List<String> complaints() {
        List<String> complaints = new ArrayList<>();
        driver.manage().logs().get(LogType.BROWSER).forEach(entry -> complaints.add(entry.getMessage()));
        return complaints;
    }

    /** What the accessibility checker finds: rule and place. */
    /** With every rule of the checker. */
    List<String> accessibilityViolations() {
        return violations("{resultTypes: ['violations']}");
    }

    /** Of colours only: another colour scheme changes nothing else. */
    List<String> colourViolations() {
        return violations("{resultTypes: ['violations'], runOnly: ['cat.color']}");
    }

    private List<String> violations(String options) {
        script(accessibilityChecker());
        Object found = driver.executeAsyncScript("const done = arguments[0];"
                + "axe.run(" + options
                + ").then(r => done(r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.html).join(' '))),"
                + " e => done(['failed: ' + e]));");
        if (!(found instanceof List<?> list)) {
            throw new AssertionError("the checker answered " + found);
        }
        return list.stream().map(String::valueOf).toList();
    }

    private static String accessibilityChecker() {
        try (InputStream in = Browser.class.getResourceAsStream("/axe.min.js")) {
            if (in == null) {
                throw new IllegalStateException("axe.min.js is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        driver.quit();
        server.close();
    }
}
