package io.rowledger.browser;

import java.time.Duration;
import java.util.List;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.PointerInput.MouseButton;
import org.openqa.selenium.interactions.PointerInput.Origin;
import org.openqa.selenium.interactions.Sequence;
import org.openqa.selenium.support.ui.Select;

/** What a person does on the review page with a mouse, a finger or the keyboard, and what is seen then. */
final class ReviewPageHands {
    final Browser browser;
    private final boolean touch;
    private boolean keyboard;

    ReviewPageHands(Browser browser, boolean touch) {
        this.browser = browser;
        this.touch = touch;
    }

    /** From now on by keyboard alone. */
    ReviewPageHands byKeyboard() {
        keyboard = true;
        return this;
    }

    Object run(String script, Object... arguments) {
        return browser.driver.executeScript(script, arguments);
    }

    private WebElement find(String selector) {
        WebElement element = browser.driver.findElement(By.cssSelector(selector));
        run("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", element);
        return element;
    }

    /** Clicks, taps or presses a control; of the map and pictures, their middle. */
    void tap(String selector) {
        WebElement element = find(selector);
        if (keyboard) {
            boolean box = "checkbox".equals(element.getDomAttribute("type"));
            element.sendKeys(box ? Keys.SPACE : Keys.ENTER);
        } else if (touch) {
            PointerInput finger = new PointerInput(PointerInput.Kind.TOUCH, "finger");
            Sequence tap = new Sequence(finger, 1)
                    .addAction(finger.createPointerMove(Duration.ZERO, Origin.fromElement(element), 0, 0))
                    .addAction(finger.createPointerDown(MouseButton.LEFT.asArg()))
                    .addAction(finger.createPointerUp(MouseButton.LEFT.asArg()));
            browser.driver.perform(List.of(tap));
        } else {
            new Actions(browser.driver, Duration.ZERO)
                    .moveToElement(element)
                    .click()
                    .perform();
        }
    }

    /** Chooses by value, by keyboard with keys alone. */
    void choose(String selector, String value) {
        WebElement element = find(selector);
        if (keyboard) {
            element.sendKeys(Keys.HOME, Keys.ARROW_DOWN.toString().repeat(index(element, value)));
        } else {
            new Select(element).selectByValue(value);
        }
    }

    private int index(WebElement element, String value) {
        return ((Number) run(
                        "var o = arguments[0].options; for (var i = 0; i < o.length; i++) {"
                                + " if (o[i].value === arguments[1]) { return i; } } return -1;",
                        element,
                        value))
                .intValue();
    }

    void press(String selector, CharSequence... keys) {
        find(selector).sendKeys(keys);
    }

    /** Drags along an element, from one share of its width to another. */
    void drag(String selector, double from, double to) {
        WebElement element = find(selector);
        int width = element.getSize().getWidth();
        PointerInput pointer = new PointerInput(touch ? PointerInput.Kind.TOUCH : PointerInput.Kind.MOUSE, "pointer");
        Sequence drag = new Sequence(pointer, 1)
                .addAction(pointer.createPointerMove(
                        Duration.ZERO, Origin.fromElement(element), (int) ((from - 0.5) * width), 0))
                .addAction(pointer.createPointerDown(MouseButton.LEFT.asArg()))
                .addAction(pointer.createPointerMove(
                        Duration.ofMillis(80), Origin.fromElement(element), (int) ((to - 0.5) * width), 0))
                .addAction(pointer.createPointerUp(MouseButton.LEFT.asArg()));
        browser.driver.perform(List.of(drag));
    }

    /** Two fingers apart over the middle of an element. */
    void pinch(String selector) {
        WebElement element = find(selector);
        browser.driver.perform(List.of(finger(element, "one", -1), finger(element, "two", 1)));
    }

    private static Sequence finger(WebElement element, String name, int side) {
        PointerInput finger = new PointerInput(PointerInput.Kind.TOUCH, name);
        return new Sequence(finger, 1)
                .addAction(finger.createPointerMove(Duration.ZERO, Origin.fromElement(element), side * 20, 0))
                .addAction(finger.createPointerDown(MouseButton.LEFT.asArg()))
                .addAction(finger.createPointerMove(Duration.ofMillis(150), Origin.fromElement(element), side * 110, 0))
                .addAction(finger.createPointerUp(MouseButton.LEFT.asArg()));
    }

    /** Waits until the map neither zooms nor glides. */
    void untilItRests() {
        Browser.pause(60);
        for (int tries = 0; tries < 200; tries++) {
            if (Boolean.TRUE.equals(run("var map = Rowledger.app.map.map;"
                    + " return !map._animatingZoom && !(map._panAnim && map._panAnim._inProgress)"))) {
                return;
            }
            Browser.pause(20);
        }
        throw new AssertionError("the map never came to rest");
    }

    /** True as soon as the map is nearer than before; false after five seconds. */
    boolean zoomsInFrom(double before) {
        for (int tries = 0; tries < 250; tries++) {
            if (zoom() > before) {
                untilItRests();
                return true;
            }
            Browser.pause(20);
        }
        return false;
    }

    double zoom() {
        return ((Number) run("return Rowledger.app.map.map.getZoom()")).doubleValue();
    }

    String span() {
        return (String) run("return JSON.stringify(Rowledger.app.span)");
    }

    String gpx() {
        return (String) run("return Rowledger.app.places.gpx()");
    }

    /** What the page knows of the place under the cursor. */
    List<String> here() {
        return texts("#here dd");
    }

    List<String> texts(String selector) {
        List<?> texts = (List<?>) run(
                "return Array.prototype.map.call(document.querySelectorAll(arguments[0]), function (e) {"
                        + " return e.textContent; });",
                selector);
        return texts.stream().map(String::valueOf).toList();
    }
}
