package io.rowledger.batch;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.UnusableInputException;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A part of a season's fields, for one of several processes or machines that share the folder of the results. A field falls to
 * a shard by its name alone: adding or removing a field moves no other field to another shard.
 *
 * @param number from 1
 * @param of how many shards there are
 */
public record Shard(int number, int of) {
    private static final Pattern TEXT = Pattern.compile("([0-9]{1,6})/([0-9]{1,6})");

    /**
     * Reads {@code I/N}.
     *
     * @throws UnusableInputException where that is no shard
     */
    public static Shard of(String text) {
        Matcher matcher = TEXT.matcher(text);
        Shard shard = matcher.matches()
                ? new Shard(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)))
                : new Shard(0, 0);
        if (shard.number < 1 || shard.number > shard.of) {
            throw UnusableInputException.found("\"" + text + "\"")
                    .atColumn("--shard")
                    .expected("I/N with I from 1 to N, such as 2/4")
                    .hint("call once for each I with the same N, then once without --shard");
        }
        return shard;
    }

    /** True if there is no shard, or if the field of this name falls to it. */
    static boolean has(@Nullable Shard shard, String field) {
        return shard == null || shard.holds(field);
    }

    /** True if the field of this name falls to this shard: SHA-256 of the name in UTF-8, its first four bytes modulo N. */
    boolean holds(String field) {
        byte[] digest = Sha256.digest().digest(field.getBytes(StandardCharsets.UTF_8));
        long value = 0;
        for (int i = 0; i < 4; i++) {
            value = value << 8 | (digest[i] & 0xff);
        }
        return value % of == number - 1;
    }

    /** Name of the hidden folder that this shard alone writes to. */
    String folder() {
        return "shard-" + number + "-of-" + of;
    }
}
