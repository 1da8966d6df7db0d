package org.lensward.eye;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import org.lensward.finding.Evidence;

/** Histories as a record with one Condition for each sign would give them. */
public final class Histories {

    private Histories() {}

    /** What is present or, where false, ruled out. */
    public static History of(Map<Sign, Boolean> signs) {
        return new History(signs.entrySet().stream()
                .map(each -> entry(each.getKey(), each.getValue()))
                .toList());
    }

    public static History of(Sign... present) {
        return new History(Arrays.stream(present).map(sign -> entry(sign, true)).toList());
    }

    public static Evidence evidence(Sign sign) {
        return new Evidence("Condition/" + sign.name().toLowerCase(Locale.ROOT), "1", "code");
    }

    private static History.Entry entry(Sign sign, boolean present) {
        return new History.Entry(sign, present, sign.toString(), evidence(sign));
    }
}
