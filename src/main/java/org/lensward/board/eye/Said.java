package org.lensward.board.eye;

import java.util.stream.Collectors;
import org.lensward.board.api.Overtaken;
import org.lensward.board.api.Refusal;

/**
 * Why a surgeon's word was not taken.
 *
 * @param what happened
 * @param next whether anything was written, and what to do
 */
record Said(String what, String next) {

    static Said of(Overtaken overtaken) {
        return new Said(
                String.valueOf(overtaken.getMessage()),
                "Nothing was written. What stands now is shown here, what you typed is kept in the form:"
                        + " look at it and decide again.");
    }

    static Said of(Refusal refusal) {
        String words = refusal.findings().stream()
                .map(each -> each.message() + " " + each.remedy())
                .collect(Collectors.joining(" "));
        return new Said(words, String.valueOf(refusal.getMessage()) + ".");
    }
}
