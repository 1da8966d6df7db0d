package org.lensward.board.eye;

import org.jspecify.annotations.Nullable;
import org.lensward.record.check.Decision;

/**
 * What a surgeon typed into a form of the page; given back with the page where it could not be done, so that nothing is lost.
 *
 * @param seen plan and check as they stood when the page was opened
 * @param reason why
 * @param target another refraction to aim at, such as {@code -0.50}
 * @param power another labelled power, such as {@code 21.5}
 * @param model another lens model
 */
record Typed(
        @Nullable String seen,
        @Nullable String reason,
        @Nullable String target,
        @Nullable String power,
        @Nullable String model) {

    static Typed nothing() {
        return new Typed("", "", "", "", "");
    }

    Typed {
        seen = seen == null ? "" : seen;
        reason = reason == null ? "" : reason.strip();
        target = target == null ? "" : target.strip();
        power = power == null ? "" : power.strip();
        model = model == null ? "" : model.strip();
    }

    Decision decision(String surgeon) {
        return new Decision(surgeon, reason == null ? "" : reason);
    }

    /** What a person typed stays out of logs. */
    @Override
    public String toString() {
        return "Typed";
    }
}
