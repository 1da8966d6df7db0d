package org.lensward.fuzz;

import java.util.List;
import java.util.SplittableRandom;

/** A record's text cut, doubled or scribbled in, as a bad line or a bad sender makes it. */
final class TextMutations {

    private static final List<String> SCRIBBLES = List.of(
            "\"",
            "{",
            "}",
            "[",
            "]",
            ",",
            ":",
            "null",
            "-",
            "e9",
            "1e999999999",
            "\\",
            "\u0000",
            "\\u0000",
            "\\ud800",
            "NaN",
            "//",
            "\"resourceType\":\"Patient\",",
            "[".repeat(2_000),
            "9".repeat(2_000));

    private final Records records;

    TextMutations(Records records) {
        this.records = records;
    }

    String of(SplittableRandom random) {
        StringBuilder text = new StringBuilder(Records.any(records.texts(), random));
        for (int times = 1 + random.nextInt(3); times > 0; times--) {
            int at = random.nextInt(text.length());
            int to = Math.min(text.length(), at + 1 + random.nextInt(30));
            switch (random.nextInt(4)) {
                case 0 -> text.delete(at, to);
                case 1 -> text.insert(at, Records.any(SCRIBBLES, random));
                case 2 -> text.insert(at, text.substring(at, to));
                default -> text.setCharAt(at, (char) (32 + random.nextInt(95)));
            }
        }
        return text.toString();
    }
}
