package io.rowledger.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.TimeoutException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Somebody at the workbench, with clicks and typed characters counted. A file that is dropped counts as a click. */
final class Person {
    private final Browser browser;
    private final ChromeDriver driver;
    private final WebDriverWait wait;
    int clicks;
    int typed;

    Person(Browser browser) {
        this.browser = browser;
        this.driver = browser.driver;
        this.wait = new WebDriverWait(driver, Duration.ofSeconds(30), Duration.ofMillis(50));
    }

    void open(String link) {
        driver.get(link);
        see("html[data-ready]");
    }

    /** Waits until something is there to be seen. */
    WebElement see(String css) {
        try {
            return wait.until(ExpectedConditions.presenceOfElementLocated(By.cssSelector(css)));
        } catch (TimeoutException e) {
            throw new AssertionError(
                    "no " + css + "; the console says " + browser.console() + "; the page says " + all(), e);
        }
    }

    boolean sees(String css) {
        return !driver.findElements(By.cssSelector(css)).isEmpty();
    }

    String text(String css) {
        return see(css).getText();
    }

    String all() {
        return driver.findElement(By.tagName("body")).getText();
    }

    void waitFor(String text) {
        wait.until(ignored -> all().contains(text));
    }

    void click(String css) {
        WebElement element = wait.until(ExpectedConditions.elementToBeClickable(By.cssSelector(css)));
        press(element);
    }

    /** Clicks the button or link with this text. */
    void clickText(String text) {
        String quoted = "\"" + text + "\"";
        WebElement element = wait.until(ExpectedConditions.elementToBeClickable(By.xpath(
                "//*[self::button or self::a or self::summary][contains(normalize-space(.), " + quoted + ")]")));
        press(element);
    }

    private void press(WebElement element) {
        clicks++;
        ((JavascriptExecutor) driver).executeScript("arguments[0].scrollIntoView({block: 'center'})", element);
        element.click();
    }

    /** Types into a field, over what is there. */
    void type(String css, String text) {
        WebElement field = wait.until(ExpectedConditions.elementToBeClickable(By.cssSelector(css)));
        press(field);
        field.sendKeys(Keys.chord(Keys.CONTROL, "a"), text);
        typed += text.length();
    }

    void choose(String css, String value) {
        clicks += 2;
        new Select(see(css)).selectByValue(value);
    }

    void drop(String css, List<Path> files) {
        clicks++;
        see(css).sendKeys(String.join("\n", files.stream().map(Path::toString).toList()));
    }

    void shot(String name) throws IOException {
        String folder = System.getProperty("workbench.shots");
        if (folder != null) {
            // The whole page, not the part that the window shows.
            Object size = driver.executeScript(
                    "return [document.documentElement.clientWidth, document.documentElement.scrollHeight]");
            java.util.List<?> pair = (java.util.List<?>) size;
            Object data = driver.executeCdpCommand(
                            "Page.captureScreenshot",
                            java.util.Map.of(
                                    "captureBeyondViewport",
                                    true,
                                    "clip",
                                    java.util.Map.of(
                                            "x", 0, "y", 0, "width", pair.get(0), "height", pair.get(1), "scale", 1)))
                    .get("data");
            Files.write(
                    Path.of(folder, name + ".png"),
                    java.util.Base64.getDecoder().decode(String.valueOf(data)));
        }
    }
}
