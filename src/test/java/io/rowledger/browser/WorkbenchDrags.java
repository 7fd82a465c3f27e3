package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.PointerInput.MouseButton;
import org.openqa.selenium.interactions.PointerInput.Origin;
import org.openqa.selenium.interactions.Sequence;

/** Rows, lengths and corners of the workbench moved with a mouse and with a finger, each move taken back in one step. */
final class WorkbenchDrags {
    private static final String FIELD = "Sample%20plugged%20row";

    private final Browser browser;
    private final Person person;
    private final PointerInput.Kind kind;

    WorkbenchDrags(Browser browser, Person person, boolean touch) {
        this.browser = browser;
        this.person = person;
        this.kind = touch ? PointerInput.Kind.TOUCH : PointerInput.Kind.MOUSE;
    }

    private Object run(String script, Object... arguments) {
        return browser.driver.executeScript(script, arguments);
    }

    private void open(String screen) {
        run("location.hash = '#/field/" + screen + "/" + FIELD + "'");
        person.see("main[data-shown=" + screen + "][data-loaded]");
    }

    /** Takes hold of a thing's middle, moves it and lets it go. */
    private void drag(String selector, int rightPx, int downPx) {
        WebElement thing = browser.driver.findElement(By.cssSelector(selector));
        run("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", thing);
        PointerInput pointer = new PointerInput(kind, kind.name());
        Sequence drag = new Sequence(pointer, 1)
                .addAction(pointer.createPointerMove(Duration.ZERO, Origin.fromElement(thing), 0, 0))
                .addAction(pointer.createPointerDown(MouseButton.LEFT.asArg()))
                .addAction(pointer.createPointerMove(Duration.ofMillis(60), Origin.pointer(), rightPx / 2, downPx / 2))
                .addAction(pointer.createPointerMove(
                        Duration.ofMillis(60), Origin.pointer(), rightPx - rightPx / 2, downPx - downPx / 2))
                .addAction(pointer.createPointerUp(MouseButton.LEFT.asArg()));
        browser.driver.perform(List.of(drag));
    }

    /** A length keeps its unit, moves by whole halves of an inch and as far as the pointer did, and goes back. */
    void lengths() {
        open("tape");
        String field = "#rig-hitch_to_drop";
        String before = person.see(field).getDomProperty("value");
        Number perMeter = (Number)
                run("var svg = document.querySelector('.view svg.top'); return svg.perMeter * svg.getScreenCTM().a");
        assertEquals(
                6L,
                run("return Array.prototype.filter.call(document.querySelectorAll('.measured svg.small'),"
                        + " function (each) { return each.querySelector('.length.marked'); }).length"),
                "a picture for each length");
        drag("svg.top .grip[data-length='rig.hitch_to_drop']", 0, 20);
        String after = person.see(field).getDomProperty("value");
        assertNotEquals(before, after);
        assertTrue(after.matches("\\d+(\\.5)? in"), after);
        double moved = inches(after) - inches(before);
        assertEquals(20 / perMeter.doubleValue() / 0.0254, moved, 0.76, "inches for 20 px");
        person.waitFor("= " + (int) (inches(after) / 12) + " ft");
        person.click(".undo");
        assertEquals(before, person.see(field).getDomProperty("value"));
        assertTrue(person.sees(".undo:disabled"), "one move, one step back");
    }

    private static double inches(String text) {
        return Double.parseDouble(text.substring(0, text.indexOf(' ')));
    }

    /** The second row is carried below the fourth: it and those between change their columns, in the rig file too. */
    void rows(Path rig) throws IOException {
        open("columns");
        person.click("details.order summary");
        person.shot("order-" + kind);
        String before = order();
        Number high = (Number)
                run("var lines = document.querySelectorAll('.order li'); var fourth = lines[3].getBoundingClientRect();"
                        + "var grip = lines[1].querySelector('.grip').getBoundingClientRect();"
                        + "return (fourth.top + fourth.bottom) / 2 - (grip.top + grip.bottom) / 2");
        drag(".order li:nth-child(2) .grip", 0, high.intValue() + 6);
        person.see("main[data-loaded=columns]:not([inert]) .undo");
        String[] was = before.split("\n", -1);
        assertEquals(String.join("\n", was[0], was[2], was[3], was[1], was[4]), head(order()));
        assertTrue(Files.readString(rig).contains(was[1]), Files.readString(rig));
        person.click(".undo");
        person.see("main[data-loaded=columns]:not([inert])");
        for (int i = 0; i < 100 && person.sees(".undo"); i++) {
            Browser.pause(50);
        }
        assertEquals(before, order());
    }

    private String order() {
        return String.valueOf(run("return Array.prototype.map.call(document.querySelectorAll('.order li'),"
                + " function (line) { return line.childNodes[1].textContent; }).join('\\n')"));
    }

    private static String head(String lines) {
        return String.join("\n", List.of(lines.split("\n", -1)).subList(0, 5));
    }

    /** A corner moves as far as the pointer, then by a button, and both moves go back one by one. */
    void corners() throws IOException {
        open("maps");
        person.click("section[data-kind=boundary] .card button, section[data-kind=boundary] > button");
        person.see("svg.maps .grip");
        person.shot("corners-" + kind);
        String outline = "return document.querySelector('svg.maps .drawn').getAttribute('d')";
        Object before = run(outline);
        drag("svg.maps .grip[data-corner='1']", 24, 12);
        Object dragged = run(outline);
        assertNotEquals(before, dragged);
        String[] at = corner(dragged, 1);
        String[] from = corner(before, 1);
        double px = ((Number) run("return document.querySelector('svg.maps').getScreenCTM().a")).doubleValue();
        assertEquals(24 / px, Double.parseDouble(at[0]) - Double.parseDouble(from[0]), 0.5, "units east");
        assertEquals(12 / px, Double.parseDouble(at[1]) - Double.parseDouble(from[1]), 0.5, "units south");
        assertTrue(person.text(".corners").contains("2"), person.text(".corners"));
        person.click(".corners button:nth-of-type(3)");
        assertNotEquals(dragged, run(outline), "a step north");
        person.click(".undo");
        assertEquals(dragged, run(outline));
        person.click(".undo");
        assertEquals(before, run(outline));
    }

    private static String[] corner(Object outline, int n) {
        return String.valueOf(outline).substring(1).split("L", -1)[n].split(" ", -1);
    }
}
