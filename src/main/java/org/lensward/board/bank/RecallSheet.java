package org.lensward.board.bank;

import java.util.List;
import java.util.Optional;
import org.lensward.board.api.Found;

/**
 * The answer to a recall, as it is shown and printed.
 *
 * @param lot asked for
 * @param device the recall's device identifier, or empty
 * @param at when the record was asked
 * @param inEyes cartons in an eye
 * @param promised cartons held for somebody
 * @param shelved those on shelves or kept apart
 * @param gone those written off
 * @param usable how many could still be used: to be put in quarantine
 * @param findings what leaves the list in doubt; empty for a complete one
 */
record RecallSheet(
        String lot,
        String device,
        String at,
        List<Line> inEyes,
        List<Line> promised,
        List<Line> shelved,
        List<Line> gone,
        int usable,
        List<Found> findings) {

    /**
     * One carton.
     *
     * @param id of its Device
     * @param lens model, power and cylinder, where it can be read
     * @param serial number, or a dash
     * @param certain whether the record says that it is of the lot
     * @param place where it lies, as far as recorded
     * @param state where it stands, where it can be read
     * @param people who has it or is to have it
     */
    record Line(
            String id,
            Optional<String> lens,
            String serial,
            boolean certain,
            String place,
            Optional<String> state,
            List<String> people) {}

    public int count() {
        return inEyes.size() + promised.size() + shelved.size() + gone.size();
    }
}
