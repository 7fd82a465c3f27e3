package io.rowledger.report.review;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import java.nio.file.Path;

class FirstPageTest {
    @TempDir
    Path folder;

    private void show(String name, HeldField f) throws Exception {
        long t = System.nanoTime();
        var a = f.analyse(folder);
        PassReview r = PassReviewReport.of(a, PassReviewTest.metric()).content();
        System.out.println("== " + name + " " + (System.nanoTime() - t) / 1000000 + " ms");
        r.verdict().forEach(System.out::println);
        HeldField.actions(r).forEach(s -> System.out.println(" * " + s));
        System.out.println(" also " + r.next().alsoFound() + " nothing " + r.next().nothing());
        r.figures().forEach(x -> System.out.println("   " + x.label() + " = " + x.value() + " (" + x.note() + ")"));
        r.days().forEach(System.out::println);
        a.diagnosis().notes().forEach(x -> System.out.println("  d " + x)); a.notes().forEach(n -> System.out.println("   note " + n.key()));
        try (var out = java.nio.file.Files.newOutputStream(Path.of("/tmp/rv/h/" + name + ".pdf"))) {
            PassReviewReport.of(a, PassReviewTest.us()).write(out);
        }
    }

    @Test
    void all() throws Exception {
        show("clean", new HeldField());
        show("plugged", new HeldField().flow((p, r, m) -> r == 4 && (p > 3 || p == 3 && m > 100) ? 0.054 : 1.8));
        show("short", new HeldField().speed(p -> new double[] {1.6, 2.5, 3.2, 2, 2.5, 3.2, 1.6, 2.5}[p - 1]).flow((p, r, m) -> new double[] {1.44, 1.8, 1.8, 1.8, 1.8, 1.8, 1.44, 1.8}[p - 1]));
        show("empty", new HeldField().flow((p, r, m) -> p == 8 || p == 7 && m > 166 ? 0 : p == 7 && m > 160 ? 1.8 * (166 - m) / 8 : 1.8));
        show("strip", new HeldField().leftOut(5));
        show("days", new HeldField().nextDayFrom(6));
        show("one", new HeldField().oneMeter());
        show("untimed", new HeldField().withoutTimes());
        show("oneuntimed", new HeldField().oneMeter().withoutTimes());
    }
}
